package content

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"image"
	_ "image/gif"  // reads its size
	_ "image/jpeg" // reads its size
	_ "image/png"  // reads its size
	"io/fs"
	"path"
	"slices"
	"strings"

	"github.com/yuin/goldmark/ast"
)

// Bounds on the pictures that notes show.
const (
	mostPictureBytes  = 8 << 20
	mostPicturesBytes = 64 << 20
	mostPixels        = 20000 // along one side
)

// endings are those of files that may be shown.
var endings = []string{".png", ".jpg", ".jpeg", ".gif", ".webp", ".svg"}

// isPicture reports whether a file is a picture by its name.
func isPicture(name string) bool {
	return slices.Contains(endings, strings.ToLower(path.Ext(name)))
}

// picture is one that a note shows: where it lies in the book, its bytes, its
// size in pixels.
type picture struct {
	path          string
	data          []byte
	width, height int
}

// lookAtPicture finds the picture that a note shows.
func (r *noteReader) lookAtPicture(n *Note, node *ast.Image) {
	at, link := n.lineOf(node), readLink(node.Destination)
	if strings.TrimSpace(n.words(node)) == "" {
		n.wrong(at, "a picture without words", "words that say what it shows", "write them between the square brackets: ![the drum's window](drum.jpg)")
	}
	const beside = "a picture beside the note: png, jpg, gif, webp or svg"
	file := decoded(link)
	switch {
	case link == "":
		n.wrong(at, "a picture without its file", beside, "write its name between the round brackets")
	case scheme.MatchString(link) || strings.HasPrefix(link, "//"):
		n.wrong(at, "the picture "+quoted(link), beside, "put the picture beside the note and write its name; the book asks for nothing from other places")
	case strings.ContainsAny(file, `/\`):
		n.wrong(at, "the picture "+quoted(link), beside, "put it into the folder of notes itself and write its name alone")
	case strings.HasPrefix(file, "."):
		n.wrong(at, "the picture "+quoted(link)+", a hidden file", beside, "rename it without the point")
	case !isPicture(file):
		n.wrong(at, "the picture "+quoted(link), beside, "save it as one of these")
	default:
		p, there := r.findPicture(file)
		if !there {
			do := "put it there, or take it out of the note"
			if near := r.near(file, r.shown); near != "" {
				do = "write " + near
			}
			n.wrong(at, "the picture "+quoted(link)+", which is not there", beside, do)
		}
		n.pictures[node] = p
	}
}

// findPicture reads a picture once. It is nil where it cannot be shown.
func (r *noteReader) findPicture(file string) (p *picture, there bool) {
	if p, known := r.pictures[file]; known {
		return p, true
	}
	if _, err := fs.Lstat(r.files, file); errors.Is(err, fs.ErrNotExist) || errors.Is(err, fs.ErrInvalid) {
		return nil, false
	}
	p = r.readPicture(file)
	r.pictures[file] = p
	return p, true
}

func (r *noteReader) readPicture(file string) *picture {
	data := r.readFile(file, "a picture", mostPictureBytes, "8 MiB", "save it smaller: 1600 pixels across are plenty")
	if data == nil {
		return nil
	}
	if r.weight += len(data); r.weight > mostPicturesBytes {
		r.wrong(file, fmt.Sprintf("pictures of more than %d MiB together", mostPicturesBytes>>20), fmt.Sprintf("at most %d MiB", mostPicturesBytes>>20), "save them smaller: 1600 pixels across are plenty")
		return nil
	}
	ending, width, height, fault := measure(data)
	switch {
	case fault != "":
		r.wrong(file, fault, "a picture: png, jpg, gif, webp or svg", "save it again from where it was made")
		return nil
	case width < 1 || height < 1 || width > mostPixels || height > mostPixels:
		r.wrong(file, fmt.Sprintf("a picture of %d by %d pixels", width, height), fmt.Sprintf("1 to %d pixels each way", mostPixels), "save it in another size")
		return nil
	}
	p := &picture{"note-" + r.guide.Slug(strings.TrimSuffix(file, path.Ext(file))) + ending, data, width, height}
	if first, taken := r.paths[p.path]; taken {
		r.wrong(file, "a name that makes the same file as "+first+": "+p.path, "another name", "rename one of the two")
		return nil
	}
	r.paths[p.path] = file
	return p
}

// measure tells what a picture is and its size in pixels, from its bytes.
func measure(data []byte) (ending string, width, height int, fault string) {
	if bytes.HasPrefix(data, []byte("RIFF")) && len(data) > 15 && string(data[8:12]) == "WEBP" {
		if width, height = measureWebP(data); width == 0 {
			fault = "a webp picture that cannot be read"
		}
		return ".webp", width, height, fault
	}
	config, kind, err := image.DecodeConfig(bytes.NewReader(data))
	switch {
	case err == nil && kind == "jpeg":
		if turned(data) {
			return ".jpg", config.Height, config.Width, ""
		}
		return ".jpg", config.Width, config.Height, ""
	case err == nil:
		return "." + kind, config.Width, config.Height, ""
	case errors.Is(err, image.ErrFormat):
		return measureSVG(data)
	}
	return "", 0, 0, "a picture that cannot be read: " + err.Error()
}

// measureWebP reads the size of a WebP picture; its three forms are those of
// RFC 9649 (from memory, confirm). Zero where it cannot be read.
func measureWebP(data []byte) (width, height int) {
	body := data[min(20, len(data)):]
	little := func(b []byte) int { return int(b[0]) | int(b[1])<<8 | int(b[2])<<16 }
	switch form := string(data[12:16]); {
	case form == "VP8X" && len(body) >= 10:
		return 1 + little(body[4:]), 1 + little(body[7:])
	case form == "VP8L" && len(body) >= 5 && body[0] == 0x2f:
		bits := binary.LittleEndian.Uint32(body[1:])
		return 1 + int(bits&0x3fff), 1 + int(bits>>14&0x3fff)
	case form == "VP8 " && len(body) >= 10 && string(body[3:6]) == "\x9d\x01\x2a":
		return int(binary.LittleEndian.Uint16(body[6:]) & 0x3fff), int(binary.LittleEndian.Uint16(body[8:]) & 0x3fff)
	}
	return 0, 0
}

// turned reports whether a JPEG picture tells the browser to show it on its
// side, as telephones do: the orientation of its Exif block is 5 to 8.
func turned(data []byte) bool {
	for at := 2; at+4 <= len(data) && data[at] == 0xff; {
		mark, size := data[at+1], int(binary.BigEndian.Uint16(data[at+2:]))
		if mark == 0xda || size < 2 || at+2+size > len(data) {
			return false
		}
		block := data[at+4 : at+2+size]
		if mark == 0xe1 && bytes.HasPrefix(block, []byte("Exif\x00\x00")) {
			return sideways(block[6:])
		}
		at += 2 + size
	}
	return false
}

// sideways reads the orientation in an Exif block.
func sideways(tiff []byte) bool {
	const orientation = 0x0112
	var order binary.ByteOrder = binary.LittleEndian
	if len(tiff) < 8 {
		return false
	}
	if string(tiff[:2]) == "MM" {
		order = binary.BigEndian
	}
	at := int(order.Uint32(tiff[4:]))
	if at < 8 || at+2 > len(tiff) {
		return false
	}
	for i := range int(order.Uint16(tiff[at:])) {
		entry := at + 2 + 12*i
		if entry+12 > len(tiff) {
			return false
		}
		if order.Uint16(tiff[entry:]) == orientation {
			value := order.Uint16(tiff[entry+8:])
			return value >= 5 && value <= 8
		}
	}
	return false
}
