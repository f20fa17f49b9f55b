package draw

import "testing"

// A label over the drive stands over its own part where the row has room, and rows never overlap or leave the paper: the label of
// the first hold stood on the far left, over the motor, with the line of the second pointing at nothing.
func TestDriveLabelsStandOverTheirParts(t *testing.T) {
	for _, ids := range [][]string{{"hold-1"}, {"hold-1", "hold-2"}, {"case", "hold-1", "hold-2"}, {"motor", "gears", "shaft", "drum"}, {"hold-2", "hold-3", "hold-4"}, {"case", "hold-1", "hold-2", "hold-3", "hold-4"}} {
		spots := make([]placed, len(ids))
		for i, id := range ids {
			spots[i] = placed{Spot: Spot{ID: id}, x: driveX(id)}
		}
		gridOf(spots, driveTop, 4)
		for i, s := range spots {
			if s.box.x0 < 0 || s.box.x1 > driveW {
				t.Errorf("%v: %s is off the paper: %+v", ids, s.ID, s.box)
			}
			if len(ids) < 3 && (s.x < s.box.x0 || s.x > s.box.x1) {
				t.Errorf("%v: %s stands at %v, its label from %v to %v", ids, s.ID, s.x, s.box.x0, s.box.x1)
			}
			if i > 0 && spots[i-1].box.y0 == s.box.y0 && spots[i-1].box.x1 > s.box.x0 {
				t.Errorf("%v: %s lies on its neighbour", ids, s.ID)
			}
		}
	}
}
