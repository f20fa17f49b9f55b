// Package year runs a year of hours over stores of any kind: what the sun brings to the line is used at once, put away
// in the stores in their order, or left over; what the night wants comes straight from the sun, out of the stores in
// the same order, or is missing. The year repeats itself: its first hour starts with what its last hour left.
//
// Left out: whatever happens inside an hour. Surplus is the hour's mean, so short peaks above a store's threshold in a
// cloudy hour are missed, and a mean above it counts as steady. An hour fills or draws, never both. Voltage and current
// of the line are not modelled.
package year

import "duskweight/internal/model/reservoir"

// Hours is the length of the year that every series has: 365 days. No typical year has a 29 February.
const Hours = 8760

// hour is the length of a step, in seconds.
const hour = 3600.0

// Input is a year at the line. The series are mean watts by hour, in standard clock time; all that are given have the
// length of Bus, and a nil one is nothing. Values below zero and values that are not numbers count as zero.
type Input struct {
	Bus       []float64 // what panels and controller bring to the line
	Standing  []float64 // what the project and the variant use all the time; not the stores' own, which stands in them
	Essential []float64 // appliances that are essential
	Nice      []float64 // appliances that are nice to have

	// Night is the number of the night that an hour belongs to, from 0, or −1 by day. Nil counts no nights.
	Night []int

	Stores []reservoir.Reservoir // in the order in which they are filled and drawn

	Managed *Managed // who goes first when not everything can be had; nil: every hour is served as it comes

	Brief bool // only the Brief of the year is asked for
	Keep  bool // keep what happened hour by hour (Result.Hourly)
}
