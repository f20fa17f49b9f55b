package store

import (
	"bufio"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"
	"time"

	"duskweight/internal/model"
)

// The test program plays other processes too: with this variable set it runs one of these parts and no test.
const partOf = "DUSKWEIGHT_TEST_PART"

var parts = map[string]func(path string) error{"save": saveForEver, "hold": holdFile, "start": startOnce}

func TestMain(m *testing.M) {
	if !withSQLite {
		fmt.Fprintln(os.Stderr, "LEFT OUT: every test of the store. SQLite is C, and this was built without cgo: install a C compiler, or set CGO_ENABLED=1.")
		os.Exit(1) // a passing run would hide it
	}
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

// tally is how far a file has come: the greatest value ever saved, the last draft, how many undos and projects, and what
// was set beside all that at the same time. Each only grows, for a save that takes another's place is always of a greater value.
type tally struct {
	Saved, Drafted, Undos, Projects int            `json:",omitempty"`
	Beside                          map[string]int `json:",omitempty"`
}

// lost is what of another tally is not in this one.
func (c tally) lost(told tally) (what []string) {
	add := func(name string, is, said int) {
		if is < said {
			what = append(what, fmt.Sprintf("%s %d, told %d", name, is, said))
		}
	}
	add("saved", c.Saved, told.Saved)
	add("drafted", c.Drafted, told.Drafted)
	add("undone", c.Undos, told.Undos)
	add("projects", c.Projects, told.Projects)
	for name, said := range told.Beside {
		add(name, c.Beside[name], said)
	}
	return what
}

func counted(s *Store) (c tally, err error) {
	settings, err := s.Settings(context.Background())
	if err != nil {
		return c, err
	}
	c.Beside = map[string]int{}
	for name, value := range settings {
		if c.Beside[name], err = strconv.Atoi(value); err != nil {
			return c, err
		}
	}
	err = s.reader.QueryRow(`SELECT (SELECT max(body ->> '$.stores[0].hoist.travel_m') FROM revision WHERE kind = 'variant'),
		(SELECT coalesce(max(CAST(text AS INTEGER)), 0) FROM draft), (SELECT count(*) FROM revision WHERE undo_of IS NOT NULL),
		(SELECT count(DISTINCT thing) FROM revision WHERE kind = 'project')`).Scan(&c.Saved, &c.Drafted, &c.Undos, &c.Projects)
	return c, err
}

// saveBeside saves settings from three sides at once, so that changes are saved together, and tells each once it was
// acknowledged. It goes on until halt is called.
func saveBeside(ctx context.Context, s *Store, from map[string]int) (halt func() error) {
	stop := make(chan struct{})
	ended := make(chan error, 3)
	for k := range 3 {
		name := fmt.Sprint("side ", k)
		go func() {
			for n := from[name] + 1; ; n++ {
				select {
				case <-stop:
					ended <- nil
					return
				default:
				}
				err := s.SaveSettings(ctx, map[string]string{name: strconv.Itoa(n)})
				if err == nil {
					err = tell(tally{Beside: map[string]int{name: n}})
				}
				if err != nil {
					fmt.Fprintln(os.Stderr, err)
					os.Exit(1)
				}
			}
		}()
	}
	return func() error {
		close(stop)
		return errors.Join(<-ended, <-ended, <-ended)
	}
}

// tell writes a line to whoever started this process: what has grown, each in one piece.
func tell(c tally) error { return json.NewEncoder(os.Stdout).Encode(c) }

// saveForEver saves, drafts, undoes, takes projects in and copies, with others that save beside it, and tells each change once it was
// acknowledged.
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
	saveBeside(ctx, s, done.Beside)
	doc, err := s.Export(ctx, 1)
	for ; err == nil; err = tell(tally{Saved: done.Saved, Drafted: done.Drafted, Undos: done.Undos, Projects: done.Projects}) {
		switch step := done.Saved + done.Drafted; {
		case done.Drafted < done.Saved:
			err = s.SaveDrafts(ctx, Thing{VariantKind, 1}, map[string]string{"f": fmt.Sprint(done.Saved)}, noon)
			done.Drafted = done.Saved
		case step%7 == 0 && done.Undos < step/7:
			_, err = s.Undo(ctx, 1, 0, noon)
			done.Undos++
		case step%11 == 0 && done.Projects < step/11:
			_, err = s.CreateProject(ctx, doc, "Taken in", noon)
			done.Projects++
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
	r := rand.New(rand.NewPCG(1, 1))
	kills, acknowledged := often(6, 10_000), 0
	first := must[[]byte](t)(os.ReadFile(path))
	for kill := range kills {
		if kill%50 == 49 { // the file does not grow for ever
			if err := errors.Join(os.RemoveAll(copyFolder(path)), os.WriteFile(path, first, 0o600)); err != nil {
				t.Fatal(err)
			}
		}
		cmd, lines := part(t, "save", path)
		wait := time.Duration(150+37*kill) * time.Millisecond
		if kill >= 6 { // in the midst of a start too
			wait = time.Duration(5+r.IntN(400)) * time.Millisecond
		}
		time.AfterFunc(wait, func() { cmd.Process.Kill() })
		var told tally
		for lines.Scan() {
			if json.Unmarshal(lines.Bytes(), &told) == nil { // the last line may be torn
				acknowledged++
			}
		}
		cmd.Wait()
		s := opened(t, path)
		var sound string
		if err := s.reader.QueryRow(`PRAGMA integrity_check`).Scan(&sound); err != nil || sound != "ok" {
			t.Fatalf("kill %d: %s, %v", kill, sound, err)
		}
		is := must[tally](t)(counted(s))
		if lost := is.lost(told); lost != nil {
			t.Errorf("kill %d: acknowledged changes are lost: %v", kill, lost)
		}
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
		if t.Failed() {
			return
		}
	}
	t.Logf("%d kills, %d acknowledged changes", kills, acknowledged)
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
	if got := readLock(path); got.Address != "" {
		t.Errorf("the dead one's address stands: %+v", got)
	}
	sampled(t, s)
}

// TestManyStarts starts eight at once: one serves, the others find it. Whoever served is killed, and its lock is in the way of none
// of the next.
func TestManyStarts(t *testing.T) {
	rounds := often(1, 1000)
	for round := range rounds {
		path := filepath.Join(t.TempDir(), "new", "duskweight.db")
		if round%2 == 1 { // a stale lock, and a file that is there
			opened(t, path).Close()
		}
		told := map[string]int{}
		var cmds []*exec.Cmd
		var all []*bufio.Scanner
		for range 8 {
			cmd, lines := part(t, "start", path)
			cmds, all = append(cmds, cmd), append(all, lines)
		}
		for _, lines := range all {
			if lines.Scan() {
				told[lines.Text()]++
			}
		}
		if told["serves"] != 1 || told["busy http://127.0.0.1:4321/"] != 7 {
			t.Fatalf("round %d: %v", round, told)
		}
		for _, cmd := range cmds {
			cmd.Process.Kill()
			cmd.Wait()
		}
	}
	t.Logf("%d times eight starts", rounds)
}
