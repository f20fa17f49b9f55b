package store

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"io/fs"
	"slices"
	"strings"
	"time"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/sun"
)

// Salvage is what can still be read of a file, whatever is damaged in it.
type Salvage struct {
	Projects []Salvaged  // the last changed first
	Lost     []Shortfall // projects, and variants without their project, of which nothing can be read
}

// Salvaged is a project that can be read, as a document that can be imported.
type Salvaged struct {
	ID    int64
	At    time.Time // of the last change that could be read, of it or of one of its variants
	Doc   model.Document
	Short []Shortfall // what is not in the document as it was saved last
}

// Shortfall is something that could not be read as it was saved last.
type Shortfall struct {
	Thing   Thing
	Name    string    // "" where it could not be read either
	Instead time.Time // when the older state was saved that stands for it; zero where nothing does
	Weather bool      // only its weather files are missing
}

// Say says what is missing, as a sentence; when writes a time.
func (f Shortfall) Say(when func(time.Time) string) string {
	what := "A " + string(f.Thing.Kind)
	if f.Name != "" {
		what = strings.ToUpper(string(f.Thing.Kind[:1])) + string(f.Thing.Kind[1:]) + " “" + f.Name + "”"
	}
	switch {
	case f.Weather:
		return what + ": its weather files cannot be read, and the sky of its place stands as described in a word. Read the files in again."
	case !f.Instead.IsZero():
		return what + ": its last change cannot be read. Its state of " + when(f.Instead) + " stands here instead."
	}
	return what + " cannot be read."
}

// salvageThing is what is found of one thing.
type salvageThing struct {
	thing   Thing
	project int64
	name    string
	highest int64 // the highest number that it is known to have had
	rows    []salvageRow
}

// salvageRow is one state of a thing, whole.
type salvageRow struct {
	row
	project *model.Project
	variant *model.Variant
	short   bool // its weather files cannot be read
}

// salvage reads what can still be read of the file at path. A file that is not there holds nothing.
func salvage(path string) (s Salvage, err error) {
	raw, err := openRaw(path)
	if errors.Is(err, fs.ErrNotExist) {
		return s, nil
	}
	if err != nil {
		return s, err
	}
	defer func() { err = errors.Join(err, raw.close()) }()
	found, texts := map[Thing]*salvageThing{}, map[string]string{}
	raw.each(func(r rawRecord) {
		if !r.index && keepSeries(r, texts) {
			return
		}
		seen, ok := seenRow(r)
		if !ok {
			return
		}
		t := found[seen.thing]
		if t == nil {
			t = &salvageThing{thing: seen.thing}
			found[seen.thing] = t
		}
		if seen.number >= t.highest {
			t.highest, t.project = seen.number, seen.row.project
		}
		if seen.name != "" && (t.name == "" || seen.number >= t.highest) {
			t.name = seen.name
		}
		if !r.index && r.whole && seen.body != "" {
			t.rows = append(t.rows, seen)
		}
	})
	for _, t := range found {
		slices.SortFunc(t.rows, func(a, b salvageRow) int { return cmp.Compare(b.number, a.number) })
	}
	return gather(found, texts), nil
}

// keepSeries takes a weather file, or a list of them, that is what its hash says.
func keepSeries(r rawRecord, texts map[string]string) bool {
	hash, ok := r.text(0)
	body, also := r.text(1)
	if !ok || !also || len(r.columns) != 2 || len(hash) != 2*sha256.Size {
		return false
	}
	if isHash(hash, body) {
		texts[hash] = body
	}
	return true
}

func isHash(hash, body string) bool {
	sum := sha256.Sum256([]byte(body))
	return hex.EncodeToString(sum[:]) == hash
}

// seenRow reads a row of the table of revisions, or of the index that names the newest ones (migrations 1 and 2). Of a row
// that is not whole the first columns are enough to know that it was there.
func seenRow(r rawRecord) (s salvageRow, ok bool) {
	kind, thing, number, project := 1, 2, 3, 4
	if r.index { // revision_newest: project, kind, thing, number, seq
		if len(r.columns) != 5 {
			return s, false
		}
		project = 0
	}
	k, _ := r.text(kind)
	s.thing.Kind = Kind(k)
	s.thing.ID, _ = r.number(thing)
	s.number, _ = r.number(number)
	s.row.project, _ = r.number(project)
	if s.thing.Kind != ProjectKind && s.thing.Kind != VariantKind || s.thing.ID <= 0 || s.number <= 0 || s.row.project <= 0 {
		return s, false
	}
	if r.index {
		_, ok = r.number(4)
		return s, ok
	}
	if r.columns[0] != nil { // the number of the row stands in its place
		return s, false
	}
	s.seq = r.row
	s.name, _ = r.text(5)
	s.place, _ = r.position(6)
	deleted, _ := r.number(7)
	s.deleted = deleted == 1
	edition, _ := r.number(8)
	s.edition = int(edition)
	s.series.String, s.series.Valid = r.text(9)
	s.at, _ = r.text(10)
	s.body, _ = r.text(17)
	return s, true
}

// gather makes documents of what was found.
func gather(found map[Thing]*salvageThing, texts map[string]string) (s Salvage) {
	variants := map[int64][]*salvageThing{}
	for _, t := range found {
		if t.thing.Kind == VariantKind {
			variants[t.project] = append(variants[t.project], t)
		}
	}
	for _, of := range variants {
		slices.SortFunc(of, func(a, b *salvageThing) int { return cmp.Compare(a.thing.ID, b.thing.ID) })
	}
	for _, t := range found {
		if t.thing.Kind != ProjectKind {
			continue
		}
		state, short, ok := t.state(texts)
		switch {
		case !ok:
			s.Lost = append(s.Lost, short...)
		case !state.deleted:
			s.Projects = append(s.Projects, assemble(state, short, variants[t.thing.ID], texts))
		}
	}
	for project, of := range variants {
		if found[Thing{ProjectKind, project}] != nil {
			continue
		}
		for _, t := range of {
			if len(t.rows) == 0 || !t.rows[0].deleted {
				s.Lost = append(s.Lost, Shortfall{Thing: t.thing, Name: t.name})
			}
		}
	}
	slices.SortFunc(s.Projects, func(a, b Salvaged) int { return cmp.Or(b.At.Compare(a.At), cmp.Compare(b.ID, a.ID)) })
	slices.SortFunc(s.Lost, func(a, b Shortfall) int {
		return cmp.Or(cmp.Compare(a.Thing.Kind, b.Thing.Kind), cmp.Compare(a.Thing.ID, b.Thing.ID))
	})
	return s
}

// assemble puts a project and its variants together.
func assemble(state salvageRow, short []Shortfall, variants []*salvageThing, texts map[string]string) Salvaged {
	out := Salvaged{ID: state.thing.ID, Doc: model.Document{Edition: document.Edition, Project: *state.project}, Short: short}
	out.At, _ = unstamp(state.at)
	var standing []salvageRow
	for _, t := range variants {
		v, short, ok := t.state(texts)
		if ok && v.deleted {
			continue
		}
		out.Short = append(out.Short, short...)
		if !ok {
			continue
		}
		standing = append(standing, v)
		if at, err := unstamp(v.at); err == nil && at.After(out.At) {
			out.At = at
		}
	}
	slices.SortStableFunc(standing, func(a, b salvageRow) int { return cmp.Compare(a.place, b.place) })
	for _, v := range standing[:min(len(standing), model.MaxVariants)] {
		out.Doc.Variants = append(out.Doc.Variants, *v.variant)
	}
	return out
}

// state is the newest state of a thing that can be read and that makes sense, and what is short of the last one.
func (t *salvageThing) state(texts map[string]string) (salvageRow, []Shortfall, bool) {
	for _, r := range t.rows {
		if !r.decode(texts) {
			continue
		}
		var short []Shortfall
		if r.number < t.highest {
			at, _ := unstamp(r.at)
			short = append(short, Shortfall{Thing: t.thing, Name: r.name, Instead: at})
		}
		if r.short {
			short = append(short, Shortfall{Thing: t.thing, Name: r.name, Weather: true})
		}
		return r, short, true
	}
	return salvageRow{}, []Shortfall{{Thing: t.thing, Name: t.name}}, false
}

// decode reads the body of a row and makes sure that what it says can be imported.
func (r *salvageRow) decode(texts map[string]string) bool {
	if _, err := unstamp(r.at); err != nil {
		return false
	}
	if r.thing.Kind == VariantKind {
		v, err := document.DecodeVariant(r.edition, []byte(r.body))
		r.variant = &v
		return err == nil && model.CheckVariant(v).Err() == nil
	}
	p, err := document.DecodeProject(r.edition, []byte(r.body))
	if err != nil {
		return false
	}
	if r.series.Valid {
		files, ok := salvageFiles(r.edition, r.series.String, texts)
		p.TakeFiles(files)
		if r.short = !ok; r.short && (p.Place.Sky == sun.SkyFile || p.Place.Sky == sun.SkyFiles) {
			p.Place.Sky = sun.SkyDescribed // a document without its files is refused; see Shortfall.Say
		}
	}
	r.project = &p
	return model.CheckProject(p).Err() == nil
}

// salvageFiles reads the weather files under a hash; none where one of them cannot be read.
func salvageFiles(edition int, hash string, texts map[string]string) ([]*sun.Series, bool) {
	body, ok := texts[hash]
	if !ok {
		return nil, false
	}
	hashes := []string{hash}
	if strings.HasPrefix(body, "[") && json.Unmarshal([]byte(body), &hashes) != nil {
		return nil, false
	}
	var files []*sun.Series
	for _, h := range hashes {
		one, err := document.DecodeSeries(edition, []byte(texts[h]))
		if err != nil {
			return nil, false
		}
		files = append(files, &one)
	}
	return files, true
}
