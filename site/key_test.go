package site

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestKeyIsReadAsMade(t *testing.T) {
	dir := t.TempDir()
	first, second := filepath.Join(dir, "a.key"), filepath.Join(dir, "b.key")
	a, b := makeKey(t, first), makeKey(t, second)
	if len(a) != 32 || a == b {
		t.Errorf("keys of %d bytes, the same: %v", len(a), a == b)
	}
	if again, err := readKey(first); err != nil || again != a {
		t.Errorf("read again: the same %v, error %v", again == a, err)
	}
	if text := fmt.Sprintf("%v %s", a, a); strings.Contains(text, string(a)) {
		t.Error("a printed key shows the secret")
	}
}

func makeKey(t *testing.T, path string) Key {
	t.Helper()
	if err := createKey(path); err != nil {
		t.Fatal(err)
	}
	key, err := readKey(path)
	if err != nil {
		t.Fatal(err)
	}
	return key
}

func TestMakeKeyKeepsAnExistingKey(t *testing.T) {
	path := filepath.Join(t.TempDir(), KeyFile)
	key := makeKey(t, path)
	if err := createKey(path); !errors.Is(err, fs.ErrExist) {
		t.Errorf("error %v", err)
	}
	if again, err := readKey(path); err != nil || again != key {
		t.Errorf("the key changed, or error %v", err)
	}
}

func TestMissingKeyIsNeverReplaced(t *testing.T) {
	path := filepath.Join(t.TempDir(), KeyFile)
	_, err := readKey(path)
	if !errors.Is(err, fs.ErrNotExist) || !strings.Contains(err.Error(), "--without-codes") {
		t.Errorf("error %v", err)
	}
	if _, err := os.Stat(path); err == nil {
		t.Error("reading made a key")
	}
}

func TestDamagedKeyIsRefused(t *testing.T) {
	path := filepath.Join(t.TempDir(), KeyFile)
	key := makeKey(t, path)
	good := keyText(key)
	line := fmt.Sprintf("key %x", string(key))
	flipped := "key 0" + line[5:]
	if flipped == line {
		flipped = "key 1" + line[5:]
	}
	for name, text := range map[string]string{
		"empty":    "",
		"cut off":  good[:len(good)-20],
		"shorter":  strings.Replace(good, line, line[:len(line)-2], 1),
		"edited":   strings.Replace(good, line, flipped, 1),
		"no check": strings.Replace(good, "check", "# check", 1),
	} {
		os.WriteFile(path, []byte(text), 0o600)
		if _, err := readKey(path); err == nil || !strings.Contains(err.Error(), "cut off or was edited") {
			t.Errorf("%s: error %v", name, err)
		}
	}
	os.WriteFile(path, []byte(strings.ReplaceAll(good, "\n", "\r\n")), 0o600)
	if again, err := readKey(path); err != nil || again != key {
		t.Errorf("with line ends of another system: error %v", err)
	}
}
