//go:build unix

package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"duskweight/internal/store"
)

// asOther names the folder that a copy of this test program looks at, as another user.
const asOther = "DUSKWEIGHT_TEST_DOCTOR"

func init() {
	if data := os.Getenv(asOther); data != "" {
		os.Exit(run(context.Background(), []string{"doctor", "-data", data, "-addr", "127.0.0.1:0"}, strings.NewReader(""), os.Stdout, os.Stderr))
	}
}

// A file and a folder that cannot be written to, as an ordinary user meets them: root may write anywhere.
func TestDoctorWithoutPermission(t *testing.T) {
	data := kept(t)
	file, dir := filepath.Join(data, store.FileName), filepath.Dir(data)
	program := filepath.Join(dir, "program")
	text, err := os.ReadFile(os.Args[0])
	if err = errors.Join(err, os.WriteFile(program, text, 0o755), os.Chmod(dir, 0o755), os.Chmod(filepath.Dir(dir), 0o755)); err != nil {
		t.Fatal(err)
	}
	look := func() map[string]string {
		t.Helper()
		return read(t, data, func() (int, string, string) {
			var stdout, stderr bytes.Buffer
			cmd := exec.Command(program)
			cmd.Dir, cmd.Stdout, cmd.Stderr = dir, &stdout, &stderr
			cmd.Env = append(os.Environ(), asOther+"="+data)
			if os.Getuid() == 0 {
				cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: 65534, Gid: 65534}}
			}
			if err := cmd.Run(); cmd.ProcessState == nil {
				t.Fatal(err)
			}
			return cmd.ProcessState.ExitCode(), stdout.String(), stderr.String()
		})
	}
	if os.Getuid() == 0 {
		err := filepath.Walk(data, func(path string, _ os.FileInfo, err error) error {
			return errors.Join(err, os.Chown(path, 65534, 65534))
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	allWell(t, look())
	if err := os.Chmod(file, 0o400); err != nil {
		t.Fatal(err)
	}
	finds(t, look()["Write access"], "write-protected", "chmod u+rw "+file)
	if err := os.Chmod(file, 0o000); err != nil {
		t.Fatal(err)
	}
	finds(t, look()["Data file"], "does not let", "chmod u+rw "+file)
	if err := errors.Join(os.Chmod(file, 0o600), os.Chmod(data, 0o500)); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.Chmod(data, 0o700) })
	finds(t, look()["Folder"], "permission denied", "chmod u+rwx "+data)
}

// A log that belongs to another file, by what the program that was cut off wrote down, is told and not read.
func TestDoctorReplaced(t *testing.T) {
	data := kept(t)
	file := filepath.Join(data, store.FileName)
	err := os.WriteFile(file+"-wal", []byte(strings.Repeat("log", 100)), 0o600)
	if err != nil {
		t.Fatal(err)
	}
	info, err := os.Stat(file + "-wal")
	if err != nil {
		t.Fatal(err)
	}
	log := info.Sys().(*syscall.Stat_t)
	held := fmt.Sprintf(`{"file":"%d:%d","log":"%d:%d"}`, log.Dev, log.Ino+1<<40, log.Dev, log.Ino)
	if err := os.WriteFile(file+".lock", []byte(held), 0o600); err != nil {
		t.Fatal(err)
	}
	line := examined(t, data)["Last change"]
	if !strings.HasPrefix(line, "well ") || !strings.Contains(line, "of the old file") {
		t.Error(line)
	}
	if code, _, stderr := command(t, "", "backup", "-data", data); code != exitDone {
		t.Error(code, stderr)
	}
	if text, err := os.ReadFile(file + ".replaced-wal"); err != nil || !strings.HasPrefix(string(text), "loglog") {
		t.Errorf("%.20q %v", text, err)
	}
	allWell(t, examined(t, data))
}
