// Package water is a store of lifted water: a pump brings it up by day, and at night it runs down through a turbine. A design
// comes in, a reservoir and checks go out.
//
// Left out: rain that falls into an open tank and water that seeps away, losses in bends and valves (they are a few metres of
// pipe more), a pump that is weaker at part of its power (one that runs at full power or not at all is told), the level that falls while the tank empties (the height counts
// from the middle of the water), and air in the pipe. Friction is that of plastic pipe and of water near 15 °C that flows
// fast enough to be turbulent. All of it makes the store a little better here than it is.
package water
