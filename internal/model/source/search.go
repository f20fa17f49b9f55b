package source

// Statistics of many years.
var (
	HyndmanFan = Source{"hyndman-fan", "R. J. Hyndman, Y. Fan, Sample Quantiles in Statistical Packages, The American Statistician 50 (1996) 361–365"}
	LawKelton  = Source{"law-kelton", "A. M. Law, W. D. Kelton, Simulation Modeling and Analysis, 3rd ed., 2000, ch. 8"}
	Spearman   = Source{"spearman", "C. Spearman, The Proof and Measurement of Association between Two Things, American Journal of Psychology 15 (1904) 72–101"}
	Hotelling  = Source{"hotelling-pabst", "H. Hotelling, M. R. Pabst, Rank Correlation and Tests of Significance Involving No Assumption of Normality, Annals of Mathematical Statistics 7 (1936) 29–43"}
	FNV        = Source{"fnv", "G. Fowler, L. C. Noll, K.-P. Vo, D. Eastlake, The FNV Non-Cryptographic Hash Algorithm, RFC draft; constants of FNV-1a, 64 bit"}
	Hanley     = Source{"hanley-lippman-hand", "J. A. Hanley, A. Lippman-Hand, If Nothing Goes Wrong, Is Everything All Right? Interpreting Zero Numerators, JAMA 249 (1983) 1743–1745"}
)
