package material

// Documents that many records name.
const (
	mmpds01            = "MMPDS-01 (identical in content to MIL-HDBK-5J), figure digitised in the MIT-licensed open dataset 'material-properties-interchange'"
	nist304Contraction = "NIST Cryogenic Material Properties fits (page text for 304 Stainless, UNS S30400; NIST lists the same expansion fit for 316), equation E or dL/L = a+bT+cT^2+dT^3+eT^4; evaluated here"
	nistMMPDS304       = "below 293 K: NIST contraction divided by (293-T); above: MMPDS-01 mean coefficient figure for 304"
	supplier4541       = "supplier table for 1.4541 after EN 10028-7 / EN 10088-2"
	recalled           = "recalled, not seen"
	en485              = "EN 485-2 table for this alloy as reproduced in the Euralliage alloy sheet"
	aluminiumManual    = "Aluminum Design Manual Table 3.3-1M (minimum mechanical properties, metric), single-page copy"
	mmpds11            = "MMPDS-11 via material-properties-interchange"
	en1999Table32b     = "EN 1999-1-1:2007 Table 3.2b (extruded and drawn products), web copy"
	en1999Table32a     = "EN 1999-1-1 Table 3.2a; recalled, not seen"
	classRules         = "Lloyd's Register, Rules for Materials Table 13.8.1 and Linkspan Rules Pt 3 Ch 2 Table 2.1.2"
	alcotec            = "AlcoTec technical guide, typical tensile properties of gas-shielded arc groove welds (reduced-section tension, 0.2 % offset in 2 in gauge)"
)
