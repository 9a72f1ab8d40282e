package tank

// A place is a position in the tank file, from 1, columns in characters.
type place struct{ line, column int }

// places maps a key path, "port[1].tube.wall", to where its value stands.
type places struct {
	value map[string]place
	key   map[string]place
}
