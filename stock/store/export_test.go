package store

// Path is where the folder is.
func (f Folder) Path() string { return f.path }
