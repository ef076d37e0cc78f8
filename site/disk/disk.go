// Package disk writes single files whole or not at all, keeps two programs from changing one thing at once, and says in plain words why something
// could not be written. The output folder (package tree) and the ledger stand on it.
package disk

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/gofrs/flock"
)

// Private is the mode of what only its owner may read, and PrivateFolder that of a folder.
const (
	Private       fs.FileMode = 0o600
	PrivateFolder fs.FileMode = 0o700
)

// Create writes a new private file and makes sure that it is on the disk. A file that is there is an error, fs.ErrExist.
func Create(path string, data []byte) error {
	file, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, Private)
	if err != nil {
		return err
	}
	if err := writeSynced(file, data); err != nil {
		os.Remove(path)
		return err
	}
	return nil
}

// Replace writes a private file whole or not at all, and makes sure that it is on the disk.
func Replace(path string, data []byte) error {
	prepared, err := Prepare(path, data)
	if err != nil {
		return err
	}
	return prepared.Put()
}

// A Prepared file is whole and on the disk under another name. Putting it in its place needs no more room there.
type Prepared struct{ from, to string }

// Prepare is the first half of Replace.
func Prepare(path string, data []byte) (Prepared, error) {
	file, err := os.CreateTemp(filepath.Dir(path), unfinished(path)) // private
	if err != nil {
		return Prepared{}, err
	}
	if err := writeSynced(file, data); err != nil {
		os.Remove(file.Name())
		return Prepared{}, err
	}
	return Prepared{file.Name(), path}, nil
}

// Name is that of the file until it is put in its place.
func (p Prepared) Name() string { return p.from }

// Put is the second half of Replace.
func (p Prepared) Put() error {
	if err := os.Rename(p.from, p.to); err != nil {
		p.Drop()
		return err
	}
	return nil
}

// Drop is Put's opposite: nothing changes.
func (p Prepared) Drop() { os.Remove(p.from) }

// unfinished is the pattern of names for a file that is not in its place yet.
func unfinished(path string) string { return "." + filepath.Base(path) + "-*" }

// Tidy removes what a killed program left unfinished of the files in a folder with a given ending. What cannot be listed can stay.
func Tidy(folder, ending string) {
	entries, _ := os.ReadDir(folder)
	for _, entry := range entries {
		if ours, _ := filepath.Match(unfinished("*"+ending), entry.Name()); ours {
			os.Remove(filepath.Join(folder, entry.Name()))
		}
	}
}

func writeSynced(file *os.File, data []byte) error {
	_, err := file.Write(data)
	return errors.Join(err, file.Sync(), file.Close())
}

// ErrLocked: another program has the lock.
var ErrLocked = errors.New("it is in use")

// Lock takes a lock on a file that it makes if need be. The system drops it when a program dies, so a killed one leaves only an empty file. A link in the
// place of the file is refused, as it would make a file elsewhere.
func Lock(path string) (release func(), err error) {
	if info, err := os.Lstat(path); err == nil && !info.Mode().IsRegular() {
		return nil, fmt.Errorf("%s is a link or a folder; move it elsewhere", path)
	}
	lock := flock.New(path, flock.SetPermissions(Private))
	locked, err := lock.TryLock()
	switch {
	case errors.Is(err, errors.ErrUnsupported): // some network drives know no locks
	case err != nil:
		return nil, err
	case !locked:
		return nil, ErrLocked
	}
	return func() { lock.Close() }, nil
}

// Why is an error of the system without the names of its calls: "no space left on device", and which file it was about.
func Why(err error) error {
	var at *fs.PathError
	var link *os.LinkError
	var call *os.SyscallError
	switch {
	case errors.As(err, &at):
		return reason{cause: at.Err, text: shown(at.Path) + at.Err.Error()}
	case errors.As(err, &link):
		return reason{cause: link.Err, text: shown(link.New) + link.Err.Error()}
	case errors.As(err, &call):
		return reason{cause: call.Err, text: call.Err.Error()}
	}
	return err
}

// shown names a file, unless its name is one that only this program knows.
func shown(path string) string {
	if strings.HasPrefix(filepath.Base(path), ".") || strings.Contains(filepath.ToSlash(path), "/.") || path == "" {
		return ""
	}
	return filepath.ToSlash(path) + ": "
}

type reason struct {
	cause error
	text  string
}

func (r reason) Error() string { return r.text }
func (r reason) Unwrap() error { return r.cause }
