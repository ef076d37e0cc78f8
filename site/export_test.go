package site

// WriteKey makes a key file with a given key, so that tests in a browser print the same codes each time.
func WriteKey(path string, key Key) error { return createPrivate(path, []byte(keyText(key))) }
