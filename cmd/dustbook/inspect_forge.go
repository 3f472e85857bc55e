package main

import (
	"os"
	"path/filepath"
	"strings"
)

// forgePath is the path of a shop file as a forge knows it: from the folder
// where the program runs, slashes forward. A file that was named by an
// absolute path is named from there too, or by its name alone where it lies
// elsewhere: no folder of a machine is told.
func forgePath(path string) string {
	if filepath.IsAbs(path) {
		path = fromHere(path)
	}
	return filepath.ToSlash(filepath.Clean(path))
}

// fromHere is an absolute path as seen from the working folder.
func fromHere(path string) string {
	here, err := os.Getwd()
	if err != nil {
		return filepath.Base(path)
	}
	short, err := filepath.Rel(here, path)
	if err != nil || short == ".." || strings.HasPrefix(short, ".."+string(filepath.Separator)) {
		return filepath.Base(path)
	}
	return short
}
