// Package lift works out a hoist's drive: will it lift, will it come down by itself, will its loads hold it steady, will
// it stay cool, and what happens when the lamps are unplugged. Compute does all of it; the single formulas are exported
// so that a wrong end value is found at its step. Static strength, holds and surroundings are package path's.
//
// Where the model stops being true, and what is left out:
//
//   - a machine is a constant K, a resistance R and a constant friction K·I_0; iron loss that grows with speed and the
//     weakening of warm magnets are not in it, so a light load at high speed comes out somewhat too well;
//   - gears lose the same torque running and standing still but for the first push; grease that stiffens in the cold is
//     the first push's factor and nothing else;
//   - figures are at 25 °C; the warm winding enters the heat, not the speed;
//   - rope and frame are stiff here: jerks are package path's;
//   - inductance and the switching of converters are left out: they are over before anything moves.
package lift
