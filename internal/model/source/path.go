package source

// Works behind the load path and the hazards.
var (
	CI1401         = Source{"ci-1401", "Cordage Institute, CI 1401-06, Safer use of fiber rope"}
	WireEndings    = Source{"tm-5-3810", "TM 5-3810-305-10, Operator's manual of a crane: wire rope"}
	SheaveTable    = Source{"rigging-sheave", "A rigging maker's catalogue, sheave size and wire rope strength: strength efficiency by D/d"}
	BlockAngles    = Source{"rigging-blocks", "A rigging maker's catalogue, loads on blocks: angle factors"}
	ShoulderEye    = Source{"rigging-eyebolt", "A rigging maker's catalogue, shoulder eye bolts: working load by angle of pull"}
	ShackleSide    = Source{"rigging-shackle", "A rigging maker's catalogue, shackles: side loading reduction"}
	EN130012       = Source{"en-13001-2", "EN 13001-2:2021, Crane safety, General design, Part 2: Load actions"}
	EN338          = Source{"en-338", "EN 338:2016, Structural timber, Strength classes"}
	EN14080        = Source{"en-14080", "EN 14080:2013, Timber structures, Glued laminated timber"}
	Eurocode5      = Source{"en-1995-1-1", "EN 1995-1-1, Eurocode 5: Design of timber structures"}
	Eurocode3      = Source{"en-1993-1-1", "EN 1993-1-1, Eurocode 3: Design of steel structures"}
	IBC1806        = Source{"ibc-1806", "International Building Code 2012, table 1806.2, Presumptive load-bearing values"}
	TemporaryWorks = Source{"temporary-works", "P. Pallett, N. Gorst, L. Clark, D. Thomas, Friction resistance in temporary works materials, Concrete 36 (6), 2002"}
	Roark          = Source{"roark", "W. C. Young, R. G. Budynas, Roark's Formulas for Stress and Strain, 7th ed., 2002"}
	Peterson       = Source{"peterson", "W. D. Pilkey, Peterson's Stress Concentration Factors, 2nd ed., 1997"}
	WinchRules     = Source{"asme-b30-7", "ASME B30.7-2006, Base-mounted drum hoists"}
	CraneRules     = Source{"osha-1910-179", "29 CFR 1910.179, Overhead and gantry cranes"}
	MineHoists     = Source{"cfr-75-1436", "30 CFR 75.1436, Wire rope connections to the drum"}
	Alberta        = Source{"alberta-ohs", "Alberta, Occupational Health and Safety Code, section 299"}
	Platforms      = Source{"mi-r-408-10575", "Michigan, R 408.10575, Powered platforms: hoisting machines"}
	FleetRule      = Source{"fleet-angle", "Wire Rope Technical Board, Wire Rope Users Manual: fleet angle"}
	FibreSheave    = Source{"rope-manual", "A rope maker's user manual: sheave diameters and bending radius"}
	FIBC           = Source{"iso-21898", "ISO 21898:2024, Flexible intermediate bulk containers for non-dangerous goods"}
	EzehSusmel     = Source{"ezeh-susmel", "O. H. Ezeh, L. Susmel, Fatigue strength of additively manufactured polylactide, 2018-2019"}
	PLASheet       = Source{"pla-sheet", "A filament maker's technical data sheet of PLA, version 1.1"}
	Juvinall       = Source{"juvinall", "R. C. Juvinall, K. M. Marshek, Fundamentals of Machine Component Design: impact"}
	DIN740         = Source{"din-740-2", "DIN 740-2, Flexible shaft couplings: parameters and design principles"}
)
