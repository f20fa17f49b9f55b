package source

// What stands behind the cells.
var (
	E1049         = Source{"astm-e1049", "ASTM E1049-85 (2017), Standard Practices for Cycle Counting in Fatigue Analysis"}
	IEEE1013      = Source{"ieee-1013", "IEEE Std 1013-2019, Recommended Practice for Sizing Lead-Acid Batteries for Stand-Alone Photovoltaic Systems"}
	IEEE485       = Source{"ieee-485", "IEEE Std 485-2010, Recommended Practice for Sizing Lead-Acid Batteries for Stationary Applications"}
	IEC62485      = Source{"iec-62485-2", "IEC 62485-2:2010, Safety requirements for secondary batteries and battery installations, part 2: Stationary batteries"}
	IEC60228      = Source{"iec-60228", "IEC 60228:2004, Conductors of insulated cables"}
	IEC60364      = Source{"iec-60364-5-52", "IEC 60364-5-52:2009, Low-voltage electrical installations: Wiring systems; figures from memory"}
	ASTMB258      = Source{"astm-b258", "ASTM B258-18, Standard Specification for Standard Nominal Diameters and Cross-Sectional Areas of AWG Sizes of Solid Round Wires"}
	NEC690        = Source{"nec-690", "NFPA 70, National Electrical Code, article 690, Solar Photovoltaic Systems"}
	Peukert       = Source{"peukert-1897", "W. Peukert, Über die Abhängigkeit der Kapazität von der Entladestromstärke bei Bleiakkumulatoren, Elektrotechnische Zeitschrift 20, 1897; rated form"}
	BatteryBU410  = Source{"bu-410", "I. Buchmann, Batteries in a Portable World: Charging at High and Low Temperatures (BU-410)"}
	IEEE1188      = Source{"ieee-1188", "IEEE Std 1188-2005, Recommended Practice for Valve-Regulated Lead-Acid Batteries, and trade guides: every 8 K halves the life (from memory)"}
	Naumann       = Source{"naumann-2018", "M. Naumann et al., Calendar aging of a LiFePO4 cell, Journal of Energy Storage 17 (2018) 153 (from a secondary copy)"}
	Schmalstieg   = Source{"schmalstieg-2014", "J. Schmalstieg et al., A holistic aging model for lithium-ion batteries, Journal of Power Sources 257 (2014) 325 (from a secondary copy)"}
	Schiffer      = Source{"schiffer-2007", "J. Schiffer et al., Model prediction for ranking lead-acid batteries according to expected lifetime, Journal of Power Sources 168 (2007) 66 (from secondary copies)"}
	Waldmann      = Source{"waldmann-2014", "T. Waldmann et al., Temperature dependent ageing mechanisms in lithium-ion batteries, Journal of Power Sources 262 (2014) 129 (read in a secondary copy)"}
	LFPCold       = Source{"lfp-cold-fit", "Capacity of lithium iron phosphate cells over temperature: a fit to one study, the original not read"}
	PNNL33283     = Source{"pnnl-33283", "V. Viswanathan et al., 2022 Grid Energy Storage Technology Cost and Performance Assessment, PNNL-33283"}
	CopperIEC     = Source{"iec-60028", "IEC 60028:1925, International standard of resistance for copper"}
	TypicalCells  = Source{"typical-cells", "typical values of cells by kind, from memory, ± 30 %"}
	TypicalFreeze = Source{"typical-freezing", "freezing point of lead–acid electrolyte over its charge, from memory"}
)
