package ledger

import (
	"crypto/rand"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"

	"example.org/doorleaf/site/disk"
)

// ThisLaptop is the name under which this laptop writes: four letters and digits, by chance, kept with the user's settings and so outside every programme
// folder. It is made when there is none.
func ThisLaptop() (string, error) {
	path, err := laptopFile()
	if err != nil {
		return "", err
	}
	return laptopAt(path)
}

// KnownLaptop is the same for whoever only reads: "" when the laptop has never written.
func KnownLaptop() string {
	path, err := laptopFile()
	if err != nil {
		return ""
	}
	data, _ := os.ReadFile(path) // without a name nothing of this laptop is under way
	return strings.TrimSpace(string(data))
}

func laptopFile() (string, error) {
	settings, err := os.UserConfigDir()
	if err != nil {
		return "", fmt.Errorf("the folder for the settings of this user cannot be found (%w); doorleaf keeps the name of this laptop there", err)
	}
	return filepath.Join(settings, "doorleaf", "laptop"), nil
}

var laptopForm = regexp.MustCompile(`^[a-z0-9]{4,16}$`)

func laptopAt(path string) (string, error) {
	data, err := os.ReadFile(path)
	if errors.Is(err, fs.ErrNotExist) {
		return newLaptop(path)
	}
	name := strings.TrimSpace(string(data))
	if err != nil || !laptopForm.MatchString(name) {
		return "", fmt.Errorf("%s does not hold the name of this laptop, four letters or digits; correct it, or remove the file, and the laptop gets a new name", filepath.ToSlash(path))
	}
	return name, nil
}

func newLaptop(path string) (string, error) {
	err := os.MkdirAll(filepath.Dir(path), disk.PrivateFolder)
	name := chance()
	if err == nil {
		err = disk.Create(path, []byte(name+"\n"))
	}
	if errors.Is(err, fs.ErrExist) { // another doorleaf was quicker
		return laptopAt(path)
	}
	if err != nil {
		return "", fmt.Errorf("the name of this laptop cannot be kept (%w); check who may write there", disk.Why(err))
	}
	return name, nil
}

// chance is a name without characters that are easily mistaken for each other, and without vowels, so that it is no word.
func chance() string {
	const letters = "bcdfghjkmnpqrstvwxz23456789"
	random := make([]byte, 4)
	rand.Read(random) // never fails: it ends the program instead
	for i, b := range random {
		random[i] = letters[int(b)%len(letters)]
	}
	return string(random)
}
