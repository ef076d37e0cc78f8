package templates

import "testing"

func TestGap(t *testing.T) {
	for _, c := range []struct{ before, after, want string }{
		{"We speak:", "English", " "},
		{"نتكلم:", "العربية", " "},
		{"我们会说：", "英语", ""},
		{"给：", "<bdi>The Lam family</bdi>", ""},
		{"请关窗。", "", ""},
		{"<strong>请关窗。</strong>", "<em>谢谢</em>", ""},
		{"直到", "我们通知您为止", ""},
		{"厨房", `<bdi dir="ltr">5 µg/ft²</bdi>`, " "},
		{"编号", "alder-14", " "},
		{"14号房子", "&lt;", " "},
		{"우리는", "영어", " "},
		{"Until", "", " "},
		{"", "", " "},
	} {
		if got := Gap(c.before, c.after); got != c.want {
			t.Errorf("between %s and %s is %q, want %q", c.before, c.after, got, c.want)
		}
	}
}
