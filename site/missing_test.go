package site_test

import (
	"io/fs"
	"strings"
	"testing"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site"
)

func TestMissingFonts(t *testing.T) {
	nothing := func(string) ([]byte, error) { return nil, fs.ErrNotExist }
	job := demoJob(t, "alder-14")
	if got := site.MissingFonts([]notices.Job{job}, nothing); len(got) > 0 {
		t.Errorf("the demo lacks fonts: %q", got)
	}
	job.Households[0].Name = "Familie 陈"
	got := site.MissingFonts([]notices.Job{job, job}, nothing)
	if len(got) != 1 || !strings.Contains(got[0], "Familie 陈 has '陈' (U+9648)") || !strings.Contains(got[0], "install Noto Sans CJK") {
		t.Errorf("%q", got)
	}
}
