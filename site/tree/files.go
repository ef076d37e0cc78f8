package tree

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"io/fs"
	"slices"
	"strings"
)

// Files are whole files in memory: their bytes by path. Paths have slashes and start at the root of the output.
type Files map[string][]byte

// A File is a file as doorleaf wrote it.
type File struct {
	Path   string `json:"path"`
	SHA256 string `json:"sha256"` // hexadecimal digits
}

// List is the files by path; never nil.
func (f Files) List() []File {
	files := []File{}
	for path, data := range f {
		files = append(files, File{Path: path, SHA256: Digest(data)})
	}
	slices.SortFunc(files, byPath)
	return files
}

func byPath(a, b File) int { return strings.Compare(a.Path, b.Path) }

// in lists the files below one folder.
func (f Files) in(folder string) Files {
	inside := Files{}
	for path, data := range f {
		if strings.HasPrefix(path, folder+"/") {
			inside[path] = data
		}
	}
	return inside
}

// Digest is the SHA-256 of data in hexadecimal digits.
func Digest(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}

// JSON is v for people and programs: two spaces for each level, a newline at the end, and < > & as they are.
func JSON(v any) []byte {
	var text strings.Builder
	encoder := json.NewEncoder(&text)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	if err := encoder.Encode(v); err != nil {
		panic(err) // plain strings and numbers always encode
	}
	return []byte(text.String())
}

// isPortable reports whether a path stays below the root and means the same on every system.
func isPortable(path string) bool {
	return fs.ValidPath(path) && !strings.ContainsAny(path, `\:`)
}
