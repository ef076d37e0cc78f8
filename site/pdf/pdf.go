// Package pdf has a browser on this computer print sheets into PDF files.
//
// A [Browser] is Chrome, Chromium or Edge, which [Find] looks for. [Browser.Print] runs it once, without a window, as a program of its own: it
// opens one file and prints it on the paper that the file asks for. Nothing of the browser is part of doorleaf.
//
// A browser writes the time into each PDF, and numbers that count what it did before. [Browser.Print] takes both out, so that the same browser makes the same bytes of the same sheets. Another
// browser, or another version of it, may write others.
package pdf

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"time"
)

// A Browser is the path of a program.
type Browser struct{ Path string }

// Patience is how long a browser may take for one file. Sixty sides take 2 s.
const Patience = 2 * time.Minute

// Print prints an HTML file on disk and returns the PDF, with an entry in its outline for each heading. The browser keeps what it has to
// remember in the folder scratch, so that it neither sees nor disturbs the coordinator's own windows.
func (b Browser) Print(html, scratch string) ([]byte, error) {
	ctx, cancel := context.WithTimeout(context.Background(), Patience)
	defer cancel()
	html, err1 := filepath.Abs(html)
	scratch, err2 := filepath.Abs(scratch)
	if err := errors.Join(err1, err2); err != nil {
		return nil, err
	}
	printed := filepath.Join(scratch, "printed.pdf")
	cmd := exec.CommandContext(ctx, b.Path, arguments(html, scratch, printed)...)
	cmd.WaitDelay = 5 * time.Second // a browser's helpers may hold its output open after it has gone
	said, err := cmd.CombinedOutput()
	data, read := os.ReadFile(printed)
	if err != nil || read != nil || !bytes.HasPrefix(data, []byte("%PDF-")) {
		return nil, failure(b.Path, ctx.Err(), err, said)
	}
	return withoutCounts(withoutTime(data)), os.Remove(printed)
}

// arguments have the older name of an option beside the newer one; browsers pass over names that they do not know.
func arguments(html, scratch, printed string) []string {
	all := []string{
		"--headless", "--disable-gpu", "--no-first-run", "--no-default-browser-check", "--disable-extensions",
		"--disable-component-update", "--disable-background-networking", "--disable-quic",
		"--user-data-dir=" + filepath.Join(scratch, "profile"),
		"--no-pdf-header-footer", "--print-to-pdf-no-header",
		"--generate-pdf-document-outline", "--print-to-pdf=" + printed,
	}
	if os.Geteuid() == 0 { // the sandbox refuses to run for root, which only a container is
		all = append(all, "--no-sandbox")
	}
	return append(all, fileURL(html))
}

// fileURL is the address of a file: "file:///C:/out/x.html".
func fileURL(path string) string {
	address := url.URL{Scheme: "file", Path: "/" + strings.TrimPrefix(filepath.ToSlash(path), "/")}
	return address.String()
}

func failure(path string, late, err error, said []byte) error {
	if late != nil {
		return fmt.Errorf("%s did not finish within %s", path, Patience)
	}
	lines := strings.Split(strings.TrimSpace(string(said)), "\n")
	return fmt.Errorf("%s made no PDF (%v); its last words were: %s", path, err, lines[len(lines)-1])
}

// date is a date of a PDF as browsers write it: "/CreationDate (D:20270401120000+00'00')" (ISO 32000-1, 7.9.4 and 14.3.3).
var date = regexp.MustCompile(`/(?:CreationDate|ModDate)\s*\(D:[0-9+\-Z']*\)`)

// withoutTime puts spaces in place of both dates, so that nothing moves and the file's table of positions stays right.
func withoutTime(data []byte) []byte {
	return date.ReplaceAllFunc(data, func(found []byte) []byte { return bytes.Repeat([]byte(" "), len(found)) })
}

// node is the name that a browser gives to a cell of a table: a number of eight digits that goes on from whatever it counted before.
var node = regexp.MustCompile(`\(node\d{8}\)`)

// withoutCounts numbers the names from 1 in the order that they have, as a PDF lists names in order (ISO 32000-1, 7.9.6). No name gets longer.
func withoutCounts(data []byte) []byte {
	var names []string
	for _, found := range node.FindAll(data, -1) {
		names = append(names, string(found))
	}
	slices.Sort(names)
	names = slices.Compact(names)
	return node.ReplaceAllFunc(data, func(found []byte) []byte {
		i, _ := slices.BinarySearch(names, string(found))
		return fmt.Appendf(nil, "(node%08d)", i+1)
	})
}
