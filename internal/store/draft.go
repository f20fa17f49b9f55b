package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"time"
)

// Drafts returns the refused texts of a thing, by field, as they were typed.
func (s *Store) Drafts(ctx context.Context, t Thing) (texts map[string]string, err error) {
	rows, err := s.reader.QueryContext(ctx, `SELECT field, text FROM draft WHERE kind = ? AND thing = ?`, t.Kind, t.ID)
	if err != nil {
		return nil, fmt.Errorf("store: %w", err)
	}
	return pairs(rows)
}

// SaveDrafts keeps refused texts until their field is saved or cleared, in place of what was kept for the same fields.
func (s *Store) SaveDrafts(ctx context.Context, t Thing, texts map[string]string, now time.Time) error {
	return s.inTx(ctx, func(ctx context.Context, tx *sql.Tx) error {
		for field, text := range texts {
			_, err := tx.ExecContext(ctx, `INSERT INTO draft (kind, thing, field, text, at) VALUES (?, ?, ?, ?, ?)
				ON CONFLICT DO UPDATE SET text = excluded.text, at = excluded.at`, t.Kind, t.ID, field, text, stamp(now))
			if err != nil {
				return fmt.Errorf("store: %w", err)
			}
		}
		return nil
	})
}

// ClearDrafts forgets the refused texts of some fields of a thing, or of all of them where no field is named.
func (s *Store) ClearDrafts(ctx context.Context, t Thing, fields ...string) error {
	return s.inTx(ctx, func(ctx context.Context, tx *sql.Tx) error {
		if len(fields) > 0 {
			return clearDrafts(ctx, tx, t, fields)
		}
		_, err := tx.ExecContext(ctx, `DELETE FROM draft WHERE kind = ? AND thing = ?`, t.Kind, t.ID)
		return err
	})
}

func clearDrafts(ctx context.Context, tx *sql.Tx, t Thing, fields []string) error {
	for _, field := range fields {
		if _, err := tx.ExecContext(ctx, `DELETE FROM draft WHERE kind = ? AND thing = ? AND field = ?`, t.Kind, t.ID, field); err != nil {
			return fmt.Errorf("store: %w", err)
		}
	}
	return nil
}

// pairs reads rows of two texts.
func pairs(rows *sql.Rows) (m map[string]string, err error) {
	defer func() { err = errors.Join(err, rows.Close()) }()
	m = map[string]string{}
	for rows.Next() {
		var k, v string
		if err := rows.Scan(&k, &v); err != nil {
			return nil, fmt.Errorf("store: %w", err)
		}
		m[k] = v
	}
	return m, rows.Err()
}
