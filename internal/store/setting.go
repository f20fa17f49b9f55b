package store

import (
	"context"
	"database/sql"
	"fmt"
)

// Settings returns the settings of the program by name: units, the label for money. What was never set is not in it.
func (s *Store) Settings(ctx context.Context) (map[string]string, error) {
	rows, err := s.reader.QueryContext(ctx, `SELECT name, value FROM setting`)
	if err != nil {
		return nil, fmt.Errorf("store: %w", err)
	}
	return pairs(rows)
}

// SaveSettings sets some settings; the others stay.
func (s *Store) SaveSettings(ctx context.Context, values map[string]string) error {
	return s.inTx(ctx, func(ctx context.Context, tx *sql.Tx) error {
		for name, value := range values {
			if _, err := tx.ExecContext(ctx, `INSERT INTO setting (name, value) VALUES (?, ?)
				ON CONFLICT DO UPDATE SET value = excluded.value`, name, value); err != nil {
				return fmt.Errorf("store: %w", err)
			}
		}
		return nil
	})
}
