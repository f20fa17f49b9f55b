package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
)

// healthSetting is the name of a setting that is never there after a change has ended.
const healthSetting = "health"

// Health reads from the file and writes to it, down to the disk, as a save does. What is in the file is the same after it: a
// setting is written and taken out again in one change.
func (s *Store) Health(ctx context.Context) error {
	if say := s.ReadOnly(); say != "" {
		return fmt.Errorf("%w: %s", ErrReadOnly, say)
	}
	var n int
	if err := s.reader.QueryRowContext(ctx, `SELECT count(*) FROM setting`).Scan(&n); err != nil {
		return fmt.Errorf("store: %w", err)
	}
	return s.inTx(ctx, func(ctx context.Context, tx *sql.Tx) error {
		_, put := tx.ExecContext(ctx, `INSERT INTO setting (name, value) VALUES (?, '')`, healthSetting)
		_, taken := tx.ExecContext(ctx, `DELETE FROM setting WHERE name = ?`, healthSetting)
		if err := errors.Join(put, taken); err != nil {
			return fmt.Errorf("store: %w", err)
		}
		return nil
	})
}
