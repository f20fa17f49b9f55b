package store

import (
	"context"
	"database/sql"
	"fmt"
	"time"
)

// KeptDeleted is how long a deleted project can be brought back.
const KeptDeleted = 30 * 24 * time.Hour

// Purge removes for good the projects that were deleted KeptDeleted ago or more, with their variants, drafts and weather
// years, and returns how many. Their ids stay spent. A clock that was set back removes nothing.
func (s *Store) Purge(ctx context.Context, now time.Time) (purged int, err error) {
	err = s.inTx(ctx, func(ctx context.Context, tx *sql.Tx) error {
		due, err := duePurge(ctx, tx, now)
		if err != nil || len(due) == 0 {
			return err
		}
		if err := spend(ctx, tx, "main"); err != nil {
			return err
		}
		for _, id := range due {
			if err := purge(ctx, tx, id); err != nil {
				return err
			}
		}
		purged = len(due)
		_, err = tx.ExecContext(ctx, `WITH used AS (SELECT DISTINCT series AS hash FROM revision WHERE series IS NOT NULL)
			DELETE FROM series WHERE hash NOT IN (SELECT hash FROM used)
				AND hash NOT IN (SELECT value FROM series AS list JOIN used USING (hash), json_each(list.body) WHERE json_type(list.body) = 'array')`)
		return err
	})
	if err != nil {
		return 0, fmt.Errorf("store: old deleted projects: %w", err)
	}
	return purged, nil
}

// duePurge finds the projects whose newest row is a tombstone that is old enough.
func duePurge(ctx context.Context, tx *sql.Tx, now time.Time) (ids []int64, err error) {
	rows, err := tx.QueryContext(ctx, `SELECT thing, at FROM
			(SELECT kind, thing, max(number) AS number FROM revision WHERE kind = 'project' GROUP BY thing)
			JOIN revision USING (kind, thing, number) WHERE deleted`)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	for rows.Next() {
		var id int64
		var text string
		if err := rows.Scan(&id, &text); err != nil {
			return nil, err
		}
		at, err := unstamp(text)
		if err != nil {
			return nil, err
		}
		if now.Sub(at) >= KeptDeleted {
			ids = append(ids, id)
		}
	}
	return ids, rows.Err()
}

func purge(ctx context.Context, tx *sql.Tx, project int64) error {
	for _, statement := range []string{
		`DELETE FROM draft WHERE (kind, thing) IN (SELECT kind, thing FROM revision WHERE project = ?)`,
		`DELETE FROM revision WHERE project = ?`,
	} {
		if _, err := tx.ExecContext(ctx, statement, project); err != nil {
			return err
		}
	}
	return nil
}

// spend writes down the highest revisions that a database, main or an attached one, ever had.
func spend(ctx context.Context, tx *sql.Tx, database string) error {
	_, err := tx.ExecContext(ctx, `INSERT INTO main.spent (kind, thing, number, seq, at)
		SELECT kind, thing, number, seq, at FROM
			(SELECT kind, thing, max(number) AS number FROM `+database+`.revision GROUP BY kind, thing)
			JOIN `+database+`.revision USING (kind, thing, number)
		UNION ALL SELECT kind, thing, number, seq, at FROM `+database+`.spent
		WHERE true
		ON CONFLICT DO UPDATE SET number = excluded.number, seq = excluded.seq, at = excluded.at WHERE excluded.number > number`)
	return err
}
