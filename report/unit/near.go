package unit

// Near returns the candidate that is a real near miss of the word, or "": at
// most two slips away (one changed, missing, added or swapped letter each), and
// never more than a third of the word, so that nothing is offered for a word
// that only happens to be short. Where none is, it is the only candidate that begins
// with the same letters, five at least and half of its own: "elliptical", ellipsoid.
func Near(word string, candidates []string) string {
	best, least := "", min(2, len([]rune(word))/3)+1
	for _, c := range candidates {
		if d := slips([]rune(word), []rune(c), least); d < least {
			best, least = c, d
		}
	}
	if best == "" {
		return sameBeginning(word, candidates)
	}
	return best
}

// leastBeginning is how many letters two words begin with for one to be meant by the
// other [-].
const leastBeginning = 5

// sameBeginning returns the only candidate that begins as the word does, or "".
func sameBeginning(word string, candidates []string) string {
	found := ""
	for _, c := range candidates {
		n := 0
		for n < min(len(word), len(c)) && word[n] == c[n] {
			n++
		}
		if n < leastBeginning || 2*n < len(c) {
			continue
		}
		if found != "" && found != c {
			return ""
		}
		found = c
	}
	return found
}

// slips returns the number of single-letter changes between two words, with a
// swap of neighbours counted once (restricted Damerau-Levenshtein distance). It
// stops early once the lengths alone differ by most.
func slips(a, b []rune, most int) int {
	if d := len(a) - len(b); d >= most || -d >= most {
		return most
	}
	rows := make([][]int, len(a)+1)
	for i := range rows {
		rows[i] = make([]int, len(b)+1)
		rows[i][0] = i
	}
	for j := range rows[0] {
		rows[0][j] = j
	}
	for i := 1; i <= len(a); i++ {
		for j := 1; j <= len(b); j++ {
			change := 1
			if a[i-1] == b[j-1] {
				change = 0
			}
			d := min(rows[i-1][j]+1, rows[i][j-1]+1, rows[i-1][j-1]+change)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				d = min(d, rows[i-2][j-2]+1)
			}
			rows[i][j] = d
		}
	}
	return rows[len(a)][len(b)]
}
