package takeoff

import "slices"

// tidyMost is the number of sticks up to which pairs are looked at.
const tidyMost = 300

// tidy takes the cheapest bin for every stick, and puts two sticks into one where
// that costs no more. It works on the list given.
func (j *job) tidy(list []pattern) []pattern {
	used := make([]int64, len(list))
	for i, p := range list {
		used[i] = j.used(p.kinds)
		list[i].bin = j.fit(used[i])
	}
	if len(j.bins) == 1 || len(list) > tidyMost {
		return list
	}
	for a := 0; a < len(list); a++ {
		for b := a + 1; b < len(list); b++ {
			one := j.fit(used[a] + used[b])
			if one == len(j.bins) || j.bins[one].price > j.bins[list[a].bin].price+j.bins[list[b].bin].price {
				continue
			}
			kinds := slices.Concat(list[a].kinds, list[b].kinds)
			slices.Sort(kinds)
			list[a] = pattern{one, kinds}
			used[a] += used[b]
			list, used = slices.Delete(list, b, b+1), slices.Delete(used, b, b+1)
			b = a
		}
	}
	return list
}
