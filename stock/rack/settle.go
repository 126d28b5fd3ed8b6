package rack

import "sawbill/stock/store"

// Settle finishes a change that a killed program left, and removes its files, so that the
// rack's file can be read. It does not wait. Where another program is at work, or the
// folder takes no file, the change may stay pending: then the text is what the history
// promises, and the rack's file still has the state before.
//
// Settle has no error: with a damaged history, or a file that cannot be read, there is
// nothing that it could promise.
func (r Rack) Settle() (text string, pending bool) {
	if !isThere(r.newFile()) && !isThere(r.lockFile()) {
		return "", false // no program is at work, and none was stopped
	}
	err := store.TryLocked(r.lockFile(), func() error {
		return r.stand(func(*standing) error { return nil })
	})
	if err == nil {
		return "", false
	}
	return r.pending()
}

// pending is the text that the rack's file is about to have, if the history promises
// it. It holds no lock: the history is read before the file, so that the file is at least
// as new.
func (r Rack) pending() (text string, there bool) {
	ready, there, err := store.Contents(r.newFile())
	if !there || err != nil {
		return "", false
	}
	s := &standing{rack: r}
	if s.past, err = r.readPast(); err != nil {
		return "", false
	}
	if s.text, s.there, err = store.Contents(r.path); err != nil {
		return "", false
	}
	return ready, s.promised(ready)
}
