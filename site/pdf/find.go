package pdf

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
)

// errNoBrowser says how to get a browser.
var errNoBrowser = errors.New("no PDF was made, because there is no Chrome, Chromium or Edge on this computer: install one of them, or set CHROME_PATH to the one you have")

// Find looks for a browser: the one that CHROME_PATH names, else one on PATH, else one where installers put it. Without any the error is
// ErrNoBrowser.
func Find() (Browser, error) { return find(os.Getenv, runtime.GOOS) }

func find(env func(string) string, system string) (Browser, error) {
	if named := env("CHROME_PATH"); named != "" {
		path, err := exec.LookPath(named)
		if err != nil {
			return Browser{}, fmt.Errorf("no PDF was made, because CHROME_PATH names %s and there is no program: correct it, or unset it", named)
		}
		return Browser{path}, nil
	}
	for _, name := range append(onPath(), installed(env, system)...) {
		if path, err := exec.LookPath(name); err == nil {
			return Browser{path}, nil
		}
	}
	return Browser{}, errNoBrowser
}

func onPath() []string {
	return []string{"chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome", "microsoft-edge", "microsoft-edge-stable", "msedge"}
}

// installed are the paths that the installers of Windows and macOS use: common practice, no source.
func installed(env func(string) string, system string) []string {
	switch system {
	case "windows":
		return below(
			[]string{env("ProgramFiles"), env("ProgramFiles(x86)"), env("LocalAppData")},
			`Google\Chrome\Application\chrome.exe`, `Chromium\Application\chrome.exe`, `Microsoft\Edge\Application\msedge.exe`)
	case "darwin":
		return below(
			[]string{"/Applications", filepath.Join(env("HOME"), "Applications")},
			"Google Chrome.app/Contents/MacOS/Google Chrome", "Chromium.app/Contents/MacOS/Chromium", "Microsoft Edge.app/Contents/MacOS/Microsoft Edge")
	}
	return nil
}

func below(folders []string, names ...string) []string {
	var all []string
	for _, name := range names {
		for _, folder := range folders {
			if folder != "" {
				all = append(all, filepath.Join(folder, name))
			}
		}
	}
	return all
}
