package study

import (
	"math"
	"math/bits"

	"gonum.org/v1/gonum/stat/distuv"
)

// Seed is that of every scatter study: the same file gives the same numbers.
const Seed = 20260131

// A cube is a Latin hypercube: the range of each input is cut into as many parts of
// equal probability as there are samples, and each part is met once. Order and
// place within a part are computed from the seed, not stored: a million samples
// need no more memory than ten.
//
// Source: McKay, Beckman and Conover 1979 (recalled).
type cube struct {
	n      int
	inputs []shuffle
}

// hypercube draws n samples of k inputs, always the same for a seed.
func hypercube(seed uint64, k, n int) cube {
	c := cube{n: n}
	for i := range k {
		c.inputs = append(c.inputs, newShuffle(n, mixed(seed^mixed(uint64(n))^mixed(uint64(i)<<32))))
	}
	return c
}

// at returns the probability that input k has in sample i [-], never 0 or 1.
func (c cube) at(k, i int) float64 {
	s := c.inputs[k]
	place := float64(mixed(s.key^mixed(uint64(i)))>>11) / (1 << 53)
	return math.Min(math.Max((float64(s.at(i))+place)/float64(c.n), 1e-12), 1-1e-12)
}

// score turns a probability u [-] into a deviate: standard normal, for coupons
// too, or from -1 to 1.
func score(shape string, u float64) float64 {
	if shape == "uniform" {
		return 2*u - 1
	}
	return distuv.UnitNormal.Quantile(u)
}

// A shuffle is a permutation of 0 to n − 1: a network that swaps and mixes two
// halves permutes a power of four that is not below n, and is walked on from what
// lies above n.
//
// Source: Luby and Rackoff 1988; walking by Black and Rogaway 2002 (both recalled).
type shuffle struct {
	n, key uint64
	half   int // bits of a half
}

// rounds of the network; three would do for large n, small n needs more.
const rounds = 8

func newShuffle(n int, key uint64) shuffle {
	return shuffle{n: uint64(n), key: key, half: max(1, (bits.Len64(uint64(n-1))+1)/2)}
}

// at returns the place of i.
func (s shuffle) at(i int) int {
	mask := uint64(1)<<s.half - 1
	for x := uint64(i); ; {
		l, r := x>>s.half, x&mask
		for round := range uint64(rounds) {
			l, r = r, l^mixed(s.key+round<<56^r)&mask
		}
		if x = l<<s.half | r; x < s.n {
			return int(x)
		}
	}
}

// mixed spreads the bits of a number over all of it.
//
// Source: the finaliser of Steele, Lea and Flood 2014 (recalled).
func mixed(x uint64) uint64 {
	x += 0x9e3779b97f4a7c15
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}
