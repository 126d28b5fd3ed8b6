package planfile

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"regexp"
	"strconv"

	"sawbill/stock/fault"
	"sawbill/stock/store"
)

const about = "what sawbill progress and sawbill recut go on from; lengths count 25 nm, prices cents"

// Bytes encodes the plan as version 2 of the file. Equal plans of equal jobs give equal
// bytes, wherever their folders lie.
func (p *Plan) Bytes() []byte {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(p.fileV2()); err != nil {
		panic("planfile: a plan that cannot be written: " + err.Error()) // only if a share is not a number
	}
	h, _ := headOf(b.Bytes())
	return h.withSum(h.sumOf())
}

// Written encodes the plan for the file at path. The error, of type [fault.Faults], refuses
// a plan whose file would be too large to be read.
func (p *Plan) Written(path string) ([]byte, error) {
	data := p.Bytes()
	if len(data) > store.MostBytes {
		return nil, fault.Faults{{File: path, Cause: fmt.Sprintf("the file would have %d MB, and at most %d MB are read", (len(data)+1<<20-1)>>20, store.MostBytes>>20),
			Remedy: "plan the job as several, or take long remarks out of its files"}}
	}
	return data, nil
}

// head is the beginning of a file: its format, and where its sum stands.
type head struct {
	data     []byte
	format   string
	from, to int // of the sum
}

var beginning = regexp.MustCompile(`^\{"format":"([^"\\]*)","sum":"([0-9a-f]*)"`)

func headOf(data []byte) (head, bool) {
	at := beginning.FindSubmatchIndex(data)
	if at == nil {
		return head{}, false
	}
	return head{data, string(data[at[2]:at[3]]), at[4], at[5]}, true
}

func (h head) withSum(sum string) []byte {
	return bytes.Join([][]byte{h.data[:h.from], h.data[h.to:]}, []byte(sum))
}

// sumOf computes the sum over the bytes of the file, without the sum itself.
func (h head) sumOf() string {
	digest := sha256.Sum256(h.withSum(""))
	return hex.EncodeToString(digest[:8])
}

// sound reports whether the file is as it was written.
func (h head) sound() bool { return string(h.data[h.from:h.to]) == h.sumOf() }

// Read reads the file at path and checks that the plan holds. The error is of type
// [fault.Faults].
func Read(path string) (*Plan, error) {
	data, err := store.Read(path)
	if err != nil {
		cause, remedy := store.Explain(err)
		if errors.Is(err, fs.ErrNotExist) {
			remedy = "name the folder that sawbill plan wrote"
		}
		return nil, fault.Faults{{File: path, Cause: cause, Remedy: remedy}}
	}
	return Parse(path, data)
}

// Parse is [Read] of what is in a file called name.
func Parse(name string, data []byte) (*Plan, error) {
	if version := versionOf(data); version > 2 {
		return nil, fault.Faults{{File: name, Cause: fmt.Sprintf("the file has version %d of the plan file, and this program reads versions up to 2", version), Remedy: "use a newer Sawbill"}}
	}
	p, err := parse(data)
	if err != nil {
		return nil, fault.Faults{{File: name, Cause: err.Error(), Remedy: "put back a copy of the file, or plan the job again into another folder"}}
	}
	return p, nil
}

var errChanged = errors.New("the file is not as it was written")

func parse(data []byte) (*Plan, error) {
	h, ok := headOf(data)
	if !ok || !h.sound() {
		return nil, errChanged
	}
	var p *Plan
	var err error
	switch h.format {
	case formatV1:
		p, err = readV1(data)
	case formatV2:
		p, err = readV2(data)
	default:
		err = fmt.Errorf("the file has a format that this program does not know (%q)", h.format)
	}
	if err != nil {
		return nil, err
	}
	if p.Code == "" || len(p.File.Sources) == 0 {
		return nil, errors.New("the file has no code, or no job")
	}
	if err := sound(p.Plan); err != nil {
		return nil, err
	}
	if err := p.Plan.Check(); err != nil {
		return nil, fmt.Errorf("the plan in the file does not hold (%w)", err)
	}
	return p, nil
}

var ofVersion = regexp.MustCompile(`^sawbill plan file (\d{1,9})$`)

// versionOf returns the version that a file states, however it is laid out; 0 for none.
func versionOf(data []byte) int {
	var f struct {
		Format string `json:"format"`
	}
	if json.Unmarshal(data, &f) != nil {
		return 0
	}
	m := ofVersion.FindStringSubmatch(f.Format)
	if m == nil {
		return 0
	}
	version, _ := strconv.Atoi(m[1]) // nine digits are a number
	return version
}

// decode reads a file that has no keys beyond those of v.
func decode(data []byte, v any) error {
	d := json.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	if err := d.Decode(v); err != nil {
		return fmt.Errorf("the file has keys or values that its version does not have (%w)", err)
	}
	return nil
}
