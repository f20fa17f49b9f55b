package store

import (
	"context"
	"crypto/sha256"
	"database/sql"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"strings"

	"duskweight/internal/document"
	"duskweight/internal/model/sun"
)

// keepFiles keeps weather files and returns the hash under which they are found again: that of the file, or where there
// are several that of the list of their hashes, which is a row of its own.
func keepFiles(ctx context.Context, tx *sql.Tx, files []*sun.Series) (string, error) {
	var hashes []string
	for _, f := range files {
		body, err := document.EncodeSeries(*f)
		if err != nil {
			return "", err
		}
		hash, err := keepText(ctx, tx, body)
		if err != nil {
			return "", err
		}
		hashes = append(hashes, hash)
	}
	if len(hashes) == 1 {
		return hashes[0], nil
	}
	list, err := json.Marshal(hashes)
	if err != nil {
		return "", err
	}
	return keepText(ctx, tx, list)
}

func keepText(ctx context.Context, tx *sql.Tx, body []byte) (string, error) {
	sum := sha256.Sum256(body)
	hash := hex.EncodeToString(sum[:])
	_, err := tx.ExecContext(ctx, `INSERT INTO series (hash, body) VALUES (?, ?) ON CONFLICT DO NOTHING`, hash, string(body))
	return hash, err
}

// readFiles returns the weather files that were kept under a hash. Their columns are shared by all who read them: they are
// not to be written to.
func readFiles(ctx context.Context, tx *sql.Tx, years *cache[string, sun.Series], edition int, hash string) ([]*sun.Series, error) {
	if s, ok := years.find(hash); ok {
		return []*sun.Series{&s}, nil
	}
	body, err := keptText(ctx, tx, hash)
	if err != nil {
		return nil, err
	}
	if !strings.HasPrefix(body, "[") {
		s, err := decodeSeries(years, edition, hash, body)
		return []*sun.Series{s}, err
	}
	var hashes []string
	if err := json.Unmarshal([]byte(body), &hashes); err != nil {
		return nil, fmt.Errorf("store: the list of weather files: %w", err)
	}
	files := make([]*sun.Series, len(hashes))
	for i, h := range hashes {
		if files[i], err = readSeries(ctx, tx, years, edition, h); err != nil {
			return nil, err
		}
	}
	return files, nil
}

func readSeries(ctx context.Context, tx *sql.Tx, years *cache[string, sun.Series], edition int, hash string) (*sun.Series, error) {
	if s, ok := years.find(hash); ok {
		return &s, nil
	}
	body, err := keptText(ctx, tx, hash)
	if err != nil {
		return nil, err
	}
	return decodeSeries(years, edition, hash, body)
}

func keptText(ctx context.Context, tx *sql.Tx, hash string) (body string, err error) {
	if err := tx.QueryRowContext(ctx, `SELECT body FROM series WHERE hash = ?`, hash).Scan(&body); err != nil {
		return "", fmt.Errorf("store: the weather file: %w", err)
	}
	return body, nil
}

func decodeSeries(years *cache[string, sun.Series], edition int, hash, body string) (*sun.Series, error) {
	s, err := document.DecodeSeries(edition, []byte(body))
	if err != nil {
		return nil, fmt.Errorf("store: the weather file: %w", err)
	}
	years.keep(hash, s, yearsKept)
	return &s, nil
}
