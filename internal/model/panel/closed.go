package panel

// The words of closed lists. The empty word means that the question is open.

// CellModel is the rule for the temperature of panel cells.
type CellModel string

// The words of CellModel.
const (
	CellFaiman  CellModel = "faiman"
	CellNominal CellModel = "nominal"
)

// ControllerKind is what stands between panels and line.
type ControllerKind string

// The words of ControllerKind.
const (
	ControllerTracking   ControllerKind = "tracking"
	ControllerPulseWidth ControllerKind = "pulse_width"
	ControllerDirect     ControllerKind = "direct"
)
