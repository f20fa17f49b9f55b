package page

// What a button of one page alone does.
const (
	PressNeed = "need"
	PressFree = "free"

	// PressPreset adds an appliance as many people own it.
	PressPreset = "preset"
)
