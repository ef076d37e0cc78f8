package tree

import (
	"fmt"
	"regexp"
	"strings"
)

// A Unit is one job: the unit of writing. It owns its folders whole.
type Unit struct {
	Code  string
	Token string // 12 digits; "" for a job made without codes, whose pages, perhaps on the web already, stay as they are
	Files Files  // all of them in its folders, its record among them
}

var (
	codeForm  = regexp.MustCompile(`^[a-z0-9][a-z0-9-]*$`)
	tokenForm = regexp.MustCompile(`^[0-9]{12}$`)
)

// Where things lie in the output.
const (
	printFolder = "print"
	webFolder   = "web"
	FontFolder  = "print/fonts" // shared by all jobs, so no job can have the code "fonts"
)

// PrintPath is the path of a file in the folder of sheets of a job.
func PrintPath(code, name string) string { return printFolder + "/" + code + "/" + name }

// SharedPrintPath is the path of a file of sheets or lists that belongs to all jobs.
func SharedPrintPath(name string) string { return printFolder + "/" + name }

// WebPath is the path of a file of the website.
func WebPath(name string) string { return webFolder + "/" + name }

// IsWeb reports whether a path is of the website.
func IsWeb(path string) bool { return strings.HasPrefix(path, webFolder+"/") }

// folders are print/<code> and web/<token>; only the first without codes.
func (u Unit) folders() []string {
	folders := []string{printFolder + "/" + u.Code}
	if u.Token != "" {
		folders = append(folders, webFolder+"/"+u.Token)
	}
	return folders
}

// check finds what would write outside the folders of the job.
func (u Unit) check() error {
	if !codeForm.MatchString(u.Code) {
		return fmt.Errorf("the job code %q cannot name a folder; use lower-case letters, digits and hyphens", u.Code)
	}
	if u.Token != "" && !tokenForm.MatchString(u.Token) {
		return fmt.Errorf("the address of job %s has %q where 12 digits belong", u.Code, u.Token)
	}
	for path := range u.Files {
		if !isPortable(path) || !u.owns(path) {
			return fmt.Errorf("job %s cannot have a file %q: it is not in its folders", u.Code, path)
		}
	}
	return nil
}

func (u Unit) owns(path string) bool {
	for _, folder := range u.folders() {
		if strings.HasPrefix(path, folder+"/") {
			return true
		}
	}
	return false
}

// isShared reports whether a path lies where no job's folder can be: at the root, in print, in print/fonts or in web.
func isShared(path string) bool {
	folder, name, nested := cutLast(path)
	place := !nested || folder == printFolder || folder == webFolder || folder == FontFolder
	return isPortable(path) && place && !strings.HasPrefix(name, ".") && path != RecordFile
}

// cutLast cuts a path before its last element.
func cutLast(path string) (folder, name string, nested bool) {
	i := strings.LastIndexByte(path, '/')
	if i < 0 {
		return "", path, false
	}
	return path[:i], path[i+1:], true
}
