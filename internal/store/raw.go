package store

import (
	"bytes"
	"encoding/binary"
	"errors"
	"io"
	"io/fs"
	"math"
	"os"
)

// rawPage is the size of a page of our files: SQLite's own choice, which this program never changes.
const rawPage = 4096

// rawFile reads a database file page by page, without SQLite: a page that is damaged is in nobody's way then. Source:
// SQLite, Database File Format. Pages of a log beside the file stand for those in it, up to the last change that was
// finished (section 4).
type rawFile struct {
	file, log *os.File
	pages     uint32
	logged    map[uint32]int64 // where in the log the newest state of a page lies
}

// openRaw opens a file and its log. A file that is not there is fs.ErrNotExist.
func openRaw(path string) (*rawFile, error) {
	file, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	r := &rawFile{file: file, logged: map[uint32]int64{}}
	info, err := file.Stat()
	if err != nil {
		return nil, errors.Join(err, file.Close())
	}
	r.pages = uint32(min((info.Size()+rawPage-1)/rawPage, math.MaxInt32))
	if r.log, err = os.Open(path + "-wal"); errors.Is(err, fs.ErrNotExist) {
		return r, nil
	}
	if err == nil {
		err = r.readLog()
	}
	if err != nil {
		return nil, errors.Join(err, r.close())
	}
	return r, nil
}

func (r *rawFile) close() error {
	if r.log == nil {
		return r.file.Close()
	}
	return errors.Join(r.log.Close(), r.file.Close())
}

// The header of a log and of each of its frames, in bytes, and its first four bytes but for the last bit, which says in
// which order of bytes its sums are made (sections 4.1 and 4.2).
const (
	logHeader  = 32
	frameHead  = 24
	logMagic   = 0x377f0682
	logVersion = 3007000
)

// readLog finds the frames that count: those whose salt is that of the log and whose sums are right, up to the last
// frame that ends a change. A log that is none has no frames.
func (r *rawFile) readLog() error {
	var head [logHeader]byte
	if _, err := io.ReadFull(r.log, head[:]); errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
		return nil
	} else if err != nil {
		return err
	}
	magic := binary.BigEndian.Uint32(head[:])
	if magic&^1 != logMagic || binary.BigEndian.Uint32(head[4:]) != logVersion || binary.BigEndian.Uint32(head[8:]) != rawPage {
		return nil
	}
	var order binary.ByteOrder = binary.LittleEndian
	if magic&1 == 1 {
		order = binary.BigEndian
	}
	sum := logSum{}.add(order, head[:24])
	if !sum.is(head[24:]) {
		return nil
	}
	waiting := map[uint32]int64{}
	frame := make([]byte, frameHead+rawPage)
	for at := int64(logHeader); ; at += int64(len(frame)) {
		if _, err := io.ReadFull(r.log, frame); err != nil || !bytes.Equal(frame[8:16], head[16:24]) {
			return nil
		}
		if sum = sum.add(order, frame[:8]).add(order, frame[frameHead:]); !sum.is(frame[16:]) {
			return nil
		}
		page := binary.BigEndian.Uint32(frame)
		waiting[page] = at + frameHead
		if size := binary.BigEndian.Uint32(frame[4:]); size > 0 {
			r.pages = max(r.pages, size)
			for page, at := range waiting {
				r.logged[page] = at
			}
			clear(waiting)
		}
	}
}

// logSum is the running sum over a log (section 4.2).
type logSum struct{ a, b uint32 }

func (s logSum) add(order binary.ByteOrder, data []byte) logSum {
	for ; len(data) >= 8; data = data[8:] {
		s.a += order.Uint32(data) + s.b
		s.b += order.Uint32(data[4:]) + s.a
	}
	return s
}

func (s logSum) is(want []byte) bool {
	return s.a == binary.BigEndian.Uint32(want) && s.b == binary.BigEndian.Uint32(want[4:])
}

// page reads page n, counted from 1; a file that ends inside it has zeros there. It reports whether there is one.
func (r *rawFile) page(n uint32) ([]byte, bool) {
	if n == 0 || n > r.pages {
		return nil, false
	}
	p := make([]byte, rawPage)
	from, at := r.file, int64(n-1)*rawPage
	if logged, ok := r.logged[n]; ok {
		from, at = r.log, logged
	}
	_, err := from.ReadAt(p, at)
	return p, err == nil || errors.Is(err, io.EOF)
}

// free are the pages that hold nothing any more (section 1.5). A damaged list is followed as far as it goes.
func (r *rawFile) free() map[uint32]bool {
	free := map[uint32]bool{}
	first, ok := r.page(1)
	if !ok {
		return free
	}
	for trunk := binary.BigEndian.Uint32(first[32:]); trunk > 1 && !free[trunk]; {
		p, ok := r.page(trunk)
		if !ok {
			break
		}
		n := binary.BigEndian.Uint32(p[4:])
		if n > (rawPage-8)/4 {
			break
		}
		free[trunk] = true
		for i := range n {
			free[binary.BigEndian.Uint32(p[8+4*i:])] = true
		}
		trunk = binary.BigEndian.Uint32(p)
	}
	return free
}

// The kinds of pages that hold records (section 1.6).
const (
	indexInside = 0x02
	indexLeaf   = 0x0a
	tableLeaf   = 0x0d
)

// rawRecord is one row of a table or an index. Of a record that goes on in a page that cannot be read, the last columns are
// missing, and it is not whole.
type rawRecord struct {
	row     int64 // its number in its table
	index   bool
	columns []any // nil, int64, float64, string or []byte
	whole   bool
}

// each calls f for each record that can be read, in no order.
func (r *rawFile) each(f func(rawRecord)) {
	free := r.free()
	for n := uint32(1); n <= r.pages; n++ {
		p, ok := r.page(n)
		if !ok || free[n] {
			continue
		}
		head := 0
		if n == 1 {
			head = 100 // the header of the file
		}
		kind := p[head]
		if kind != tableLeaf && kind != indexLeaf && kind != indexInside {
			continue
		}
		list := head + 8
		if kind == indexInside {
			list += 4
		}
		cells := int(binary.BigEndian.Uint16(p[head+3:]))
		for i := range min(cells, (rawPage-list)/2) {
			if record, ok := r.record(p, int(binary.BigEndian.Uint16(p[list+2*i:])), kind); ok {
				f(record)
			}
		}
	}
}

// record reads the cell at a place of a page.
func (r *rawFile) record(p []byte, at int, kind byte) (rec rawRecord, ok bool) {
	if kind == indexInside {
		at += 4
	}
	if at < 8 || at >= len(p) {
		return rec, false
	}
	rest := p[at:]
	size, n := varint(rest)
	if n == 0 || size > uint64(r.pages)*rawPage {
		return rec, false
	}
	rest = rest[n:]
	rec.index = kind != tableLeaf
	if !rec.index {
		row, n := varint(rest)
		if n == 0 {
			return rec, false
		}
		rec.row, rest = int64(row), rest[n:]
	}
	payload, whole := r.payload(rest, int(size), rec.index)
	rec.columns, rec.whole = columnsOf(payload)
	rec.whole = rec.whole && whole
	return rec, len(rec.columns) > 0
}

// payload gathers what a cell holds, from its page and from those where it goes on (section 1.6). It reports whether all of
// it was found.
func (r *rawFile) payload(here []byte, size int, index bool) ([]byte, bool) {
	most := rawPage - 35
	if index {
		most = (rawPage-12)*64/255 - 23
	}
	local := size
	if size > most {
		least := (rawPage-12)*32/255 - 23
		if local = least + (size-least)%(rawPage-4); local > most {
			local = least
		}
	}
	if local > len(here) {
		return here, false
	}
	all := append([]byte(nil), here[:local]...)
	if local == size {
		return all, true
	}
	if local+4 > len(here) {
		return all, false
	}
	for next := binary.BigEndian.Uint32(here[local:]); len(all) < size; {
		p, ok := r.page(next)
		if !ok {
			return all, false
		}
		all = append(all, p[4:4+min(rawPage-4, size-len(all))]...)
		next = binary.BigEndian.Uint32(p)
	}
	return all, true
}

// columnsOf reads the columns of a record as far as they go (section 2.1).
func columnsOf(payload []byte) (columns []any, whole bool) {
	size, n := varint(payload)
	if n == 0 || size > uint64(len(payload)) || size < uint64(n) {
		return nil, false
	}
	types, body := payload[n:size], payload[size:]
	for len(types) > 0 {
		kind, n := varint(types)
		if n == 0 {
			return columns, false
		}
		types = types[n:]
		value, length, ok := columnOf(kind, body)
		if !ok {
			return columns, false
		}
		columns, body = append(columns, value), body[length:]
	}
	return columns, true
}

// wholeNumbers is how many bytes a whole number of each kind from 1 on has.
var wholeNumbers = [...]int{1: 1, 2: 2, 3: 3, 4: 4, 5: 6, 6: 8}

// columnOf reads one column from the front of what is left of a record.
func columnOf(kind uint64, body []byte) (value any, length int, ok bool) {
	switch {
	case kind == 0:
		return nil, 0, true
	case kind >= 1 && kind <= 6:
		length = wholeNumbers[kind]
		if length > len(body) {
			return nil, 0, false
		}
		x := int64(int8(body[0]))
		for _, b := range body[1:length] {
			x = x<<8 | int64(b)
		}
		return x, length, true
	case kind == 7:
		if len(body) < 8 {
			return nil, 0, false
		}
		return math.Float64frombits(binary.BigEndian.Uint64(body)), 8, true
	case kind == 8, kind == 9:
		return int64(kind - 8), 0, true
	case kind >= 12:
		size := (kind - 12) / 2
		if size > uint64(len(body)) {
			return nil, 0, false
		}
		if kind%2 == 1 {
			return string(body[:size]), int(size), true
		}
		return body[:size], int(size), true
	}
	return nil, 0, false
}

// varint reads a whole number of one to nine bytes, and says how many; 0 where it does not end (section 1.6).
func varint(b []byte) (x uint64, n int) {
	for i := range min(9, len(b)) {
		if i == 8 {
			return x<<8 | uint64(b[i]), 9
		}
		x = x<<7 | uint64(b[i]&0x7f)
		if b[i] < 0x80 {
			return x, i + 1
		}
	}
	return 0, 0
}

func (r rawRecord) text(i int) (string, bool) {
	if i >= len(r.columns) {
		return "", false
	}
	s, ok := r.columns[i].(string)
	return s, ok
}

func (r rawRecord) number(i int) (int64, bool) {
	if i >= len(r.columns) {
		return 0, false
	}
	n, ok := r.columns[i].(int64)
	return n, ok
}

// position is a column of real numbers: SQLite keeps a whole one as such.
func (r rawRecord) position(i int) (float64, bool) {
	if n, ok := r.number(i); ok {
		return float64(n), true
	}
	if i >= len(r.columns) {
		return 0, false
	}
	x, ok := r.columns[i].(float64)
	return x, ok
}
