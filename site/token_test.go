package site

import (
	"crypto/hmac"
	"crypto/sha256"
	"fmt"
	"strings"
	"testing"
)

// Keys and data of RFC 4231, sections 4.2 and 4.3 (test cases 1 and 2), with the values of HMAC-SHA-256 printed there.
var rfc4231 = []struct {
	key, data, mac string
	token          string // echo "ibase=16; <first 16 digits of mac, in capitals> % E8D4A51000" | bc, and a zero in front where bc leaves it out
}{
	{strings.Repeat("\x0b", 20), "Hi There", "b0344c61d8db38535ca8afceaf0bf12b881dc200c9833da726e9376c2e32cff7", "232598054995"},
	{"Jefe", "what do ya want for nothing?", "5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843", "061930427726"},
}

func TestTokenAgainstRFC4231(t *testing.T) {
	for _, c := range rfc4231 {
		mac := hmac.New(sha256.New, []byte(c.key))
		mac.Write([]byte(c.data))
		if got := fmt.Sprintf("%x", mac.Sum(nil)); got != c.mac {
			t.Errorf("HMAC of %q is %s, want %s", c.data, got, c.mac)
		}
		if got := token(Key(c.key), c.data); got != c.token {
			t.Errorf("token of %q is %s, want %s", c.data, got, c.token)
		}
	}
}

// The values come from OpenSSL and bc:
//
//	mac=$(printf %s alder-14 | openssl dgst -sha256 -mac HMAC -macopt hexkey:000102…1f)   # 57c4df1f7b81401b…
//	echo "ibase=16; 57C4DF1F7B81401B % E8D4A51000" | bc                                   # E8D4A51000 is 10^12
//
// and bc leaves out the two zeros in front of 9617220017 (elm-15, 56476522896db1b1…).
func TestTokenAgainstOpenSSL(t *testing.T) {
	var key strings.Builder
	for b := range byte(32) {
		key.WriteByte(b)
	}
	for code, want := range map[string]string{"alder-14": "103044067355", "elm-15": "009617220017"} {
		if got := token(Key(key.String()), code); got != want {
			t.Errorf("token of %s is %s, want %s", code, got, want)
		}
	}
}

func TestTokensDifferByKeyAndCode(t *testing.T) {
	seen := map[string]bool{}
	for _, key := range []Key{"one", "two"} {
		for n := range 500 {
			seen[token(key, fmt.Sprintf("elm-%d", n))] = true
		}
	}
	if len(seen) != 1000 {
		t.Errorf("1000 jobs have %d tokens", len(seen))
	}
}

func TestGrouped(t *testing.T) {
	if got := grouped("482109371158"); got != [3]string{"4821", "0937", "1158"} {
		t.Errorf("groups %v", got)
	}
}
