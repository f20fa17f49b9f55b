package unit

import "testing"

func TestQuick(t *testing.T) {
	for _, c := range []struct {
		q Quantity
		s string
	}{{Lengths, "9 ft 2 in"}, {Lengths, `9'2"`}, {Lengths, "9' 2 1/2\""}, {Lengths, "2.8 m"}, {Masses, "38kg"}, {RotationSpeeds, "410 rpm"}, {Lengths, "1,500"}, {Lengths, "1.500,2"}, {Lengths, "3 kg"}, {Masses, "2'000"},
		{Voltages, "12V"}, {Voltages, "1e999"}, {Voltages, "0x10"}, {Voltages, "1_000"}, {Voltages, "NaN"}, {ClockTimes, "18:30"}, {ClockTimes, "6:30 pm"}, {UTCOffsets, "+5:30"}, {Latitudes, "45 degrees"}, {Latitudes, "33.9 S"}, {Latitudes, `51°30'N`}, {Temperatures, "77 F"}, {Powers, "5 mW"}, {Powers, "5 MW"}, {Powers, "5 mw"}, {Powers, "5 KW"}, {Durations, "1h30"}, {MachineConstants, "400 rpm/V"}, {Inertias, "5e-5 kg m2"}, {Lengths, "1½"}, {Lengths, "1½ in"}, {GearRatios, "1:27"}} {
		v, k, err := c.q.Parse(c.s, Metric)
		t.Log(c.s, v, k, err)
		if k {
			for _, sys := range []System{Metric, Imperial} {
				f := c.q.FormatFull(v, sys)
				w, _, err := c.q.Parse(f, sys)
				t.Log("   ", c.q.Format(v, sys), "|", f, w == v, err)
			}
		}
	}
}
