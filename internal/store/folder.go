package store

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime"

	"duskweight/migrations"
)

// FileName is the name of the database in the data folder.
const FileName = "duskweight.db"

// Schema is the number of the schema that this program makes and brings older files up to.
const Schema = migrations.Newest

// DataFolder returns where the operating system wants a program's data: DUSKWEIGHT_DATA where it is set; on Linux and
// the like $XDG_DATA_HOME/duskweight or ~/.local/share/duskweight (XDG Base Directory Specification 0.8); elsewhere the
// folder of the user's settings. Nothing is made.
func DataFolder() (string, error) {
	if dir := os.Getenv("DUSKWEIGHT_DATA"); dir != "" {
		return filepath.Abs(dir)
	}
	if runtime.GOOS == "windows" || runtime.GOOS == "darwin" {
		dir, err := os.UserConfigDir()
		if err != nil {
			return "", fmt.Errorf("store: no folder for data: %w; set DUSKWEIGHT_DATA", err)
		}
		return filepath.Join(dir, "duskweight"), nil
	}
	if dir := os.Getenv("XDG_DATA_HOME"); filepath.IsAbs(dir) {
		return filepath.Join(dir, "duskweight"), nil
	}
	home, err := os.UserHomeDir()
	if err != nil {
		return "", fmt.Errorf("store: no folder for data: %w; set DUSKWEIGHT_DATA", err)
	}
	return filepath.Join(home, ".local", "share", "duskweight"), nil
}
