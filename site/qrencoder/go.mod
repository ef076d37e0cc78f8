module github.com/skip2/go-qrcode

go 1.13
