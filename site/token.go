package site

import (
	"crypto/hmac"
	"crypto/sha256"
	"encoding/binary"
	"fmt"
)

// token is the part of a job's addresses that nobody can guess: 12 decimal digits, the same for the same key and job code at all times.
//
// It is the first 8 bytes of HMAC-SHA-256(key, code), read as a big-endian number, modulo 10^12. As 2^64 is not a multiple of 10^12, some
// tokens are likelier than others by one part in 18 million, which helps nobody who guesses.
func token(key Key, code string) string {
	mac := hmac.New(sha256.New, []byte(key))
	mac.Write([]byte(code))
	return fmt.Sprintf("%012d", binary.BigEndian.Uint64(mac.Sum(nil))%1e12)
}

// grouped cuts a token into the three groups of four digits in which paper shows it: 4821 0937 1158.
func grouped(token string) [3]string {
	return [3]string{token[:4], token[4:8], token[8:]}
}
