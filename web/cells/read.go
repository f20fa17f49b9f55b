package cells

import "duskweight/web/page"

// read is what stands on the parts round a battery. The printed lines are examples of our own of what stands on such labels
// (common practice).
var read = map[string]page.Reading{
	partBattery: page.Read("battery", "What to read on the battery", "Without a label, take the charge from its data sheet. A used battery holds less: a lamp and a clock measure it.",
		page.Alike("12.8 V", "voltage"), page.Alike("100 Ah / 20 h", "charge, over 20 hours"), page.Line("0 … 45 °C", "32 … 113 °F", "warmth while it charges")),
	partPanels: page.Read("panel", "What to read behind the panel", "Without a label, a meter in full sun measures the volts with nothing connected.",
		page.Alike("Pmax 100 W", "most power"), page.Alike("Voc 22.5 V", "volts with nothing connected"), page.Alike("Isc 5.8 A", "amperes short-circuited")),
	partFuse: page.Read("fuse", "What to read on the fuse", "A fuse without volts for direct current (DC) is not one for a battery.",
		page.Alike("30 A", "current at which it may melt"), page.Alike("58 V DC", "most voltage that it breaks"), page.Alike("IC 2 kA", "most current that it breaks")),
	partController: page.Read("supply", "What to read on the controller", "Its data sheet has both numbers where the case has none.",
		page.Alike("PV ≤ 50 V", "most volts of the panels"), page.Alike("20 A", "most current that it gives")),
}
