package site

import (
	"crypto/rand"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"example.org/doorleaf/site/disk"
)

// KeyFile is the name of the key file. It lies beside programme.yaml.
const KeyFile = "doorleaf.key"

// A Key is the programme's secret: 32 random bytes. Whoever holds it can work out the address of every page.
type Key string

const keySize = 32

// String keeps the secret out of messages and logs.
func (Key) String() string { return "(secret key)" }

// createKey makes a new key and writes it to a file that must not exist yet. Only the first set-up of a programme calls it: a second key would
// turn every code that is already on paper into a dead end.
func createKey(path string) error {
	secret := make([]byte, keySize)
	rand.Read(secret) // never fails: it ends the program instead
	err := disk.Create(path, []byte(keyText(Key(secret))))
	if errors.Is(err, fs.ErrExist) {
		return fmt.Errorf("%s exists already, and the addresses on your paper come from it; keep it: %w", path, fs.ErrExist)
	}
	return err
}

// readKey reads a key file. A missing, cut off or edited key is an error that says how to get it back; it is never replaced by a new key.
func readKey(path string) (Key, error) {
	data, err := os.ReadFile(path)
	if errors.Is(err, fs.ErrNotExist) {
		return "", fmt.Errorf("the key file %s is missing. Every address in a code on paper comes from it, and with another key those codes would"+
			" stop working. Copy %s from the laptop or the backup that has it, or make the paper with --without-codes: it then"+
			" shows phone numbers only: %w", path, filepath.Base(path), fs.ErrNotExist)
	}
	if err != nil {
		return "", fmt.Errorf("cannot read the key file: %w", err)
	}
	key, ok := parseKey(string(data))
	if !ok {
		return "", fmt.Errorf("the key file %s is cut off or was edited. Copy it again from your other laptop or your backup, or make the paper"+
			" with --without-codes: it then shows phone numbers only", path)
	}
	return key, nil
}

// keyText is the content of a key file: comments, the key as 64 hexadecimal digits, and a check that finds a cut or a slip.
func keyText(key Key) string {
	return fmt.Sprintf(`# The secret key of your doorleaf programme. The addresses in the codes on your paper come from it.
# Keep a copy of this file away from this computer. Lose it, and codes for new paper of the same job no longer match the old.
# Do not edit it, do not upload it, do not send it to anyone outside the programme.
key %x
check %s
`, string(key), keyCheck(key))
}

func parseKey(text string) (Key, bool) {
	field := map[string]string{}
	for line := range strings.Lines(text) {
		if name, value, ok := strings.Cut(strings.TrimSpace(line), " "); ok && name != "#" {
			field[name] = value
		}
	}
	secret, err := hex.DecodeString(field["key"])
	key := Key(secret)
	return key, err == nil && len(key) == keySize && field["check"] == keyCheck(key)
}

// keyCheck is 8 hexadecimal digits. They come from a digest, so they tell nothing about the key.
func keyCheck(key Key) string {
	sum := sha256.Sum256([]byte("doorleaf key 1\n" + string(key)))
	return hex.EncodeToString(sum[:4])
}
