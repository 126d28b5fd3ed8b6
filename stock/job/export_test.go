package job

import (
	"io/fs"
	"path"
)

// ReadFS is Read within a file system, such as one in memory.
func ReadFS(fsys fs.FS, name string) (*File, error) {
	beside := func(list string) string { return path.Join(path.Dir(name), list) }
	return read(name, beside, func(name string) ([]byte, error) { return fs.ReadFile(fsys, name) }, nil, Changes{})
}
