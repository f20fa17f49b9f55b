package place

import (
	"fmt"
	"math"
	"net/http"
	"strconv"
	"strings"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/internal/weather"
	"duskweight/web/form"
	"duskweight/web/page"
)

// slipView is the question why the sun of a file runs early or late, with the ways to take its times beside it.
type slipView struct {
	Title   string        // the question
	Say     string        // by how much
	Options []form.Option // ways to take the times; each says what would be left of the slip
	Minutes string        // by which the light would be moved
	Best    string        // the best fit
}

// mostWays is how many ways to take the times are offered.
const mostWays = 3

// slipViewOf is the question that a file leaves open; nil where it leaves none.
func slipViewOf(r weather.Report) *slipView {
	if !r.Asks("slip") && !r.Asks("daylight") {
		return nil
	}
	minutes := float64(r.Slip.Val) / 60
	word := "late"
	if minutes < 0 {
		word = "early"
	}
	v := &slipView{Minutes: strconv.Itoa(int(math.Round(-minutes))), Title: "Why does the sun of this file run " + word + "?"}
	v.Say = fmt.Sprintf("On clear days it runs about %s %s.", say.Time(unit.Duration(math.Abs(minutes)*60)).To(2), word)
	v.Best = "Best fit: " + v.Minutes + "."
	if r.Asks("daylight") {
		from, to := weather.DayOfYear(r.Summer[0]), weather.DayOfYear(r.Summer[1])
		v.Title = "Why does the sun of this file run late in one half of the year?"
		v.Say = fmt.Sprintf("From about %s to %s it runs about an hour late.", from, to)
		v.Options = append(v.Options, form.Option{Value: fmt.Sprintf("summer,%d,%d", r.Summer[0], r.Summer[1]), Word: fmt.Sprintf("The rows keep daylight saving time from %s to %s, the best fit", from, to)})
		if !r.Asks("slip") {
			return v
		}
	}
	clocks := len(v.Options)
	for _, f := range r.Fits {
		left := math.Abs(float64(f.Late)) / 60
		if len(v.Options) == clocks+mostWays || left > math.Abs(minutes)-3 {
			break
		}
		word := form.Sentence(f.Way(r.Mapping.StampZone, r.Step))
		word = strings.TrimSuffix(word, ".") + fmt.Sprintf(" (%s left)", page.Counted(int(math.Round(left)), "minute"))
		if len(v.Options) == clocks {
			word += ", the best fit of the clocks"
		}
		v.Options = append(v.Options, form.Option{Value: wayValue(f), Word: word})
	}
	return v
}

// wayValue is a way to take the times as a form sends it: the place of the stamp, and the clock in seconds where it is one.
func wayValue(f weather.Fit) string {
	if !f.Zone.Is {
		return f.Stamp
	}
	return fmt.Sprintf("%s,%.0f", f.Stamp, float64(f.Zone.Val))
}

// wayOf sets how the times are taken to what a form sent; false where it is no answer.
func wayOf(m *weather.Mapping, why, minutes string) (say string, ok bool) {
	m.Move = unit.Known[unit.Duration]{}
	switch stamp, clock, zoned := strings.Cut(why, ","); {
	case stamp == "summer":
		var days [2]int
		if _, err := fmt.Sscanf(clock, "%d,%d", &days[0], &days[1]); err != nil || min(days[0], days[1]) < 1 || max(days[0], days[1]) > 366 {
			return "Choose why the sun of the file runs early or late.", false
		}
		m.Summer = days
	case why == "leave":
		m.Move = unit.Of(unit.Duration(0))
	case why == "move":
		n, err := strconv.ParseFloat(strings.NewReplacer("\u2212", "-", ",", ".").Replace(strings.TrimSpace(minutes)), 64)
		if err != nil || !(math.Abs(n) <= 720) {
			return "Minutes: give a number from −720 to 720.", false
		}
		m.Move = unit.Of(unit.Duration(n) * unit.Minute)
	case stamp == "start" || stamp == "middle" || stamp == "end":
		m.Stamp, m.StampZone = stamp, unit.Known[unit.Duration]{}
		if n, err := strconv.ParseFloat(clock, 64); zoned && err == nil && math.Abs(n) <= 14*3600 {
			m.StampZone = unit.Of(unit.Duration(n))
		}
	default:
		return "Choose why the sun of the file runs early or late.", false
	}
	return "", true
}

// answerSlip reads a file that waits again, with its times taken as its reader says.
func (s *Pages) answerSlip(w http.ResponseWriter, r *http.Request) error {
	p, on, err := s.waiting(w, r)
	if err != nil || on == nil {
		return err
	}
	hint := on.mapping
	if say, ok := wayOf(&hint, r.PostForm.Get("why"), r.PostForm.Get("minutes")); !ok {
		return page.BadRequest(say)
	}
	s.desk.drop(on.token)
	return s.readAgain(w, r, p, on, hint)
}
