package store

import (
	"bufio"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"duskweight/internal/model"
)

// The test program plays other processes too: with this variable set it runs one of these parts and no test.
const partOf = "DUSKWEIGHT_TEST_PART"

var parts = map[string]func(path string) error{"save": saveForEver, "hold": holdFile, "start": startOnce}

func TestMain(m *testing.M) {
	if part := parts[os.Getenv(partOf)]; part != nil {
		if err := part(os.Args[1]); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		return
	}
	os.Exit(m.Run())
}

// part starts another process that plays a part on a file; its lines are what it tells.
func part(t *testing.T, name, path string) (*exec.Cmd, *bufio.Scanner) {
	t.Helper()
	cmd := partCommand(name, path)
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { cmd.Process.Kill(); cmd.Wait() })
	lines := bufio.NewScanner(out)
	lines.Buffer(nil, 1<<20)
	return cmd, lines
}

func partCommand(name, path string) *exec.Cmd {
	cmd := exec.Command(os.Args[0], path)
	cmd.Env = append(os.Environ(), partOf+"="+name)
	cmd.Stderr = os.Stderr
	return cmd
}

// tally is how far a file has come: the greatest value ever saved, the last draft, how many undos. Each only grows, for
// a save that takes another's place is always of a greater value.
type tally struct{ Saved, Drafted, Undos int }

func counted(s *Store) (c tally, err error) {
	err = s.reader.QueryRow(`SELECT (SELECT max(body ->> '$.stores[0].hoist.travel_m') FROM revision WHERE kind = 'variant'),
		(SELECT coalesce(max(CAST(text AS INTEGER)), 0) FROM draft), (SELECT count(*) FROM revision WHERE undo_of IS NOT NULL)`).Scan(&c.Saved, &c.Drafted, &c.Undos)
	return c, err
}

// saveForEver saves, drafts, undoes and copies, and tells each change once it was acknowledged.
func saveForEver(path string) error {
	ctx := context.Background()
	s, err := Open(ctx, path, noon)
	if err != nil {
		return err
	}
	done, err := counted(s)
	if err != nil {
		return err
	}
	for tell := json.NewEncoder(os.Stdout); err == nil; err = tell.Encode(done) {
		switch step := done.Saved + done.Drafted; {
		case done.Drafted < done.Saved:
			err = s.SaveDrafts(ctx, Thing{VariantKind, 1}, map[string]string{"f": fmt.Sprint(done.Saved)}, noon)
			done.Drafted = done.Saved
		case step%7 == 0 && done.Undos < step/7:
			_, err = s.Undo(ctx, 1, 0, noon)
			done.Undos++
		default:
			done.Saved++
			err = saveTravel(ctx, s, done.Saved)
		}
		if err == nil && done.Saved%40 == 0 {
			_, err = s.Backup(ctx, noon)
		}
		if err != nil {
			return err
		}
	}
	return err
}

// saveTravel saves a value in the only variant; every fifth joins the one before.
func saveTravel(ctx context.Context, s *Store, value int) error {
	v, err := s.Variant(ctx, 1)
	if err != nil {
		return err
	}
	e := Edit{Revision: v.Revision, Page: "p", Field: fmt.Sprint(value % 5 / 4)}
	_, err = s.SaveVariant(ctx, v.ID, lifting(v.Value, float64(value)), e, noon)
	return err
}

// TestKill kills a saving process again and again: what it acknowledged is there, and the file is sound.
func TestKill(t *testing.T) {
	path := filepath.Join(t.TempDir(), "duskweight.db")
	s := opened(t, path)
	p, v := sampled(t, s)
	if p.ID != 1 || v.ID != 1 {
		t.Fatal("the first project and variant are not number 1")
	}
	must[Saved[model.Variant]](t)(s.SaveVariant(t.Context(), 1, lifting(v.Value, 3), Edit{Revision: 1}, noon))
	s.Close()
	for kill := range 6 {
		cmd, lines := part(t, "save", path)
		time.AfterFunc(time.Duration(150+37*kill)*time.Millisecond, func() { cmd.Process.Kill() })
		var told tally
		n := 0
		for lines.Scan() {
			if json.Unmarshal(lines.Bytes(), &told) == nil { // the last line may be torn
				n++
			}
		}
		cmd.Wait()
		s := opened(t, path)
		var sound string
		if err := s.reader.QueryRow(`PRAGMA integrity_check`).Scan(&sound); err != nil || sound != "ok" {
			t.Fatalf("kill %d: %s, %v", kill, sound, err)
		}
		is := must[tally](t)(counted(s))
		t.Logf("kill %d after %d acknowledged changes: told %+v, found %+v", kill, n, told, is)
		if is.Saved < told.Saved || is.Drafted < told.Drafted || is.Undos < told.Undos {
			t.Errorf("an acknowledged change is lost")
		}
		s.Close()
	}
}

// holdFile opens a file, says its address, and keeps it.
func holdFile(path string) error {
	s, err := Open(context.Background(), path, noon)
	if err != nil {
		return err
	}
	time.Sleep(100 * time.Millisecond) // the page takes a moment to be served
	if err := s.Announce("http://127.0.0.1:4321/"); err != nil {
		return err
	}
	fmt.Println("held")
	time.Sleep(time.Minute)
	return nil
}

// startOnce opens a file as one of many: the first serves, the others tell the address of the first.
func startOnce(path string) error {
	s, err := Open(context.Background(), path, noon)
	if busy, ok := errors.AsType[*Busy](err); ok {
		fmt.Println("busy", busy.Address)
		return nil
	}
	if err != nil {
		return err
	}
	if err := s.Announce("http://127.0.0.1:4321/"); err != nil {
		return err
	}
	fmt.Println("serves")
	time.Sleep(2 * time.Second)
	return s.Close()
}

// TestSecondStart refuses the second process with the address of the first, and a dead one's lock is in nobody's way.
func TestSecondStart(t *testing.T) {
	path := filepath.Join(t.TempDir(), "duskweight.db")
	opened(t, path).Close()
	cmd, lines := part(t, "hold", path)
	if !lines.Scan() {
		t.Fatal("the first did not start")
	}
	began := time.Now()
	_, err := Open(t.Context(), path, noon)
	busy, ok := errors.AsType[*Busy](err)
	if !ok || !errors.Is(err, ErrBusy) || busy.Address != "http://127.0.0.1:4321/" || busy.PID != cmd.Process.Pid {
		t.Errorf("%v", err)
	}
	if took := time.Since(began); took > 300*time.Millisecond {
		t.Errorf("it took %v", took)
	}
	cmd.Process.Kill()
	cmd.Wait()
	s := opened(t, path)
	if got := readBusy(path + ".lock"); got.Address != "" {
		t.Errorf("the dead one's address stands: %+v", got)
	}
	sampled(t, s)
}

// TestManyStarts starts eight at once: one serves, the others find it.
func TestManyStarts(t *testing.T) {
	path := filepath.Join(t.TempDir(), "new", "duskweight.db")
	told := map[string]int{}
	var all []*bufio.Scanner
	for range 8 {
		_, lines := part(t, "start", path)
		all = append(all, lines)
	}
	for _, lines := range all {
		if lines.Scan() {
			told[lines.Text()]++
		}
	}
	if told["serves"] != 1 || told["busy http://127.0.0.1:4321/"] != 7 {
		t.Errorf("%v", told)
	}
}
