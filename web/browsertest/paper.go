package browsertest

import (
	"bytes"
	"cmp"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"io"
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/ledongthuc/pdf"
)

// Sheet is a page as printed.
type Sheet struct {
	Bytes []byte
	Pages int
	Size  [][2]float64 // width and height of each page in points: A4 is 595 × 842, Letter 612 × 792
	Text  string
	Least float64 // the least size of its letters, points; letters that stand upright on the page alone
}

// Print prints the page as the browser's print dialogue would: paper size and margins from the page's own styles.
func (tab *Tab) Print() Sheet {
	tab.t.Helper()
	return tab.print(chromedp.PDFPreferCSSPageSize())
}

// PrintOn prints on that paper whatever the page's styles say, with the margins of the styles.
func (tab *Tab) PrintOn(paper chromedp.PaperSize) Sheet {
	tab.t.Helper()
	return tab.print(chromedp.PDFPaper(paper))
}

func (tab *Tab) print(opts ...chromedp.PDFOption) Sheet {
	tab.t.Helper()
	raw := get(tab, chromedp.PrintToPDF(append(opts, chromedp.PDFPrintBackground())...))
	s, err := readSheet(raw)
	tab.check(err)
	return s
}

func readSheet(raw []byte) (Sheet, error) {
	s := Sheet{Bytes: raw}
	r, err := pdf.NewReader(bytes.NewReader(raw), int64(len(raw)))
	if err != nil {
		return s, err
	}
	s.Pages = r.NumPage()
	s.Least = math.Inf(1)
	for i := range s.Pages {
		for _, t := range r.Page(i + 1).Content().Text {
			if t.FontSize > 0 && strings.TrimSpace(t.S) != "" { // turned letters are read as of no size
				s.Least = min(s.Least, t.FontSize)
			}
		}
		box := r.Page(i + 1).V.Key("MediaBox")
		s.Size = append(s.Size, [2]float64{box.Index(2).Float64() - box.Index(0).Float64(), box.Index(3).Float64() - box.Index(1).Float64()})
	}
	text, err := r.GetPlainText()
	if err != nil {
		return s, err
	}
	b, err := io.ReadAll(text)
	s.Text = string(b)
	return s, err
}

// Says reports whether the words stand on the sheet, whatever the spaces and line breaks between them.
func (s Sheet) Says(words string) bool {
	return strings.Contains(squeezed(s.Text), squeezed(words))
}

func squeezed(s string) string {
	return strings.NewReplacer(" ", "", "\n", "", "\t", "", "\u00a0", "", "\r", "", "\u202f", "").Replace(s)
}

// Shot writes a picture of the whole page as name.png into the folder that DUSKWEIGHT_SHOTS names; without it, nothing.
func (tab *Tab) Shot(name string) {
	tab.t.Helper()
	if os.Getenv("DUSKWEIGHT_SHOTS") != "" {
		keep(tab.t, name+".png", get(tab, chromedp.FullScreenshot(100)))
	}
}

// View writes a picture of what the window shows as name.png into the folder that DUSKWEIGHT_SHOTS names; without it, nothing.
func (tab *Tab) View(name string) {
	tab.t.Helper()
	if os.Getenv("DUSKWEIGHT_SHOTS") != "" {
		keep(tab.t, name+".png", packed(tab.t, get(tab, chromedp.CaptureScreenshot())))
	}
}

// packed is the same picture in its 256 most frequent colours, the others in the nearest of these, so that it takes a third of the
// room.
func packed(t testing.TB, data []byte) []byte {
	t.Helper()
	picture, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	size := picture.Bounds()
	count := map[color.Color]int{}
	for y := size.Min.Y; y < size.Max.Y; y++ {
		for x := size.Min.X; x < size.Max.X; x++ {
			count[picture.At(x, y)]++
		}
	}
	frequent := slices.SortedFunc(maps.Keys(count), func(a, b color.Color) int {
		return cmp.Or(count[b]-count[a], cmp.Compare(fmt.Sprint(a), fmt.Sprint(b)))
	})
	colours := color.Palette(frequent[:min(256, len(frequent))])
	nearest := map[color.Color]uint8{}
	for c := range count {
		nearest[c] = uint8(colours.Index(c))
	}
	out := image.NewPaletted(size, colours)
	for y := size.Min.Y; y < size.Max.Y; y++ {
		for x := size.Min.X; x < size.Max.X; x++ {
			out.SetColorIndex(x, y, nearest[picture.At(x, y)])
		}
	}
	var b bytes.Buffer
	if err := (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&b, out); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// Keep writes the printed sheet as name.pdf into the folder that DUSKWEIGHT_SHOTS names; without it, nothing.
func (s Sheet) Keep(t testing.TB, name string) {
	t.Helper()
	if os.Getenv("DUSKWEIGHT_SHOTS") != "" {
		keep(t, name+".pdf", s.Bytes)
	}
}

func keep(t testing.TB, name string, data []byte) {
	t.Helper()
	dir := os.Getenv("DUSKWEIGHT_SHOTS")
	if err := os.MkdirAll(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	name = strings.NewReplacer("/", "-", " ", "-").Replace(name)
	if err := os.WriteFile(filepath.Join(dir, name), data, 0o644); err != nil {
		t.Fatal(err)
	}
}
