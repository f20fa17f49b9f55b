package source

// The works that the hoist's drive is computed from.
var (
	VDI2157      = Source{"vdi-2157", "VDI 2157, Planetengetriebe: Begriffe, Symbole, Berechnungsgrundlagen"}
	Shigley      = Source{"shigley", "Budynas & Nisbett, Shigley's Mechanical Engineering Design"}
	Bhandari     = Source{"bhandari", "Bhandari, Introduction to Machine Design"}
	Mott         = Source{"mott", "Mott, Machine Elements in Mechanical Design"}
	EulerRope    = Source{"euler-eytelwein", "rope friction of Euler and Eytelwein"}
	FitzgeraldEM = Source{"fitzgerald", "Fitzgerald, Kingsley & Umans, Electric Machinery, ch. 7 (direct-current machines)"}
	Appelbaum    = Source{"appelbaum-1986", "Appelbaum, Starting and Steady-State Characteristics of DC Motors Powered by Solar Cell Generators, IEEE Transactions on Energy Conversion EC-1(1), 1986"}
	IEC60034     = Source{"iec-60034-1", "IEC 60034-1, Rotating electrical machines: rating and performance"}
	OceanWinch   = Source{"oceanographic-winch", "Handbook of Oceanographic Winch, Wire and Cable Technology, ch. 12"}
	SelfLockFAQ  = Source{"seva-tec", "SEVA-tec, questions about worm gears, 2.1.3: self-locking by efficiency"}
)
