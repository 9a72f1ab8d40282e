package pdf

import (
	"bytes"
	"cmp"
	"compress/zlib"
	"errors"
	"fmt"
	"regexp"
	"runtime"
	"slices"
	"strconv"
	"sync"
	"sync/atomic"
)

// errUnknownFile is of a file that is not as the writer ends one.
var errUnknownFile = errors.New("the file is not as its writer ends one")

// plainStream is the head of an object whose stream is not compressed, since it
// names no filter; in it the length of the stream.
var plainStream = regexp.MustCompile(`^\d+ 0 obj\n<</Length (\d+)>>\nstream\n`)

// squeezed returns a file as the writer ends it with its plain streams, those of the
// pages, compressed and its references written anew. The writer would compress one
// after the other and make room anew for each; here all processors share them. Each
// is compressed by itself, so that the same streams give the same bytes.
func squeezed(file []byte) ([]byte, error) {
	head, objects, foot, err := takenApart(file)
	if err != nil {
		return nil, err
	}
	var next atomic.Int64
	var work sync.WaitGroup
	failed := make([]error, len(objects))
	for range min(runtime.GOMAXPROCS(0), len(objects)) {
		work.Go(func() {
			var s squeezer
			for i := int(next.Add(1)) - 1; i < len(objects); i = int(next.Add(1)) - 1 {
				objects[i].bytes, failed[i] = s.squeeze(objects[i].bytes)
			}
		})
	}
	work.Wait()
	if err := errors.Join(failed...); err != nil {
		return nil, err
	}
	return putTogether(head, objects, foot), nil
}

// An object is one numbered piece of a file.
type object struct {
	number, offset int
	bytes          []byte
}

// takenApart returns what stands before the objects of a file, the objects in the
// order of the file, and its trailer up to the place of the references.
func takenApart(file []byte) (head []byte, objects []object, foot []byte, err error) {
	const rows, trailer, start = "\nxref\n0 ", "trailer\n", "startxref\n"
	at := bytes.LastIndex(file, []byte(rows))
	if at < 0 {
		return nil, nil, nil, errUnknownFile
	}
	table, foot, ok := bytes.Cut(file[at+len(rows):], []byte(trailer))
	count, list, found := bytes.Cut(table, []byte("\n"))
	n, err := strconv.Atoi(string(count))
	end := bytes.LastIndex(foot, []byte(start))
	const long = 20 // of a row
	if !ok || !found || err != nil || end < 0 || len(list) != n*long {
		return nil, nil, nil, errUnknownFile
	}
	for i := 1; i < n; i++ {
		offset, err := strconv.Atoi(string(list[i*long : i*long+10]))
		if err != nil || offset > at {
			return nil, nil, nil, errUnknownFile
		}
		objects = append(objects, object{number: i, offset: offset})
	}
	slices.SortFunc(objects, func(a, b object) int { return cmp.Compare(a.offset, b.offset) })
	for i := range objects {
		to := at + 1
		if i+1 < len(objects) {
			to = objects[i+1].offset
		}
		objects[i].bytes = file[objects[i].offset:to]
	}
	if len(objects) == 0 {
		return nil, nil, nil, errUnknownFile
	}
	return file[:objects[0].offset], objects, foot[:end], nil
}

// putTogether writes the file again, with the places of its objects.
func putTogether(head []byte, objects []object, foot []byte) []byte {
	var out bytes.Buffer
	out.Write(head)
	offsets := make([]int, len(objects)+1)
	for _, o := range objects {
		offsets[o.number] = out.Len()
		out.Write(o.bytes)
	}
	at := out.Len()
	fmt.Fprintf(&out, "xref\n0 %d\n0000000000 65535 f \n", len(offsets))
	for _, offset := range offsets[1:] {
		fmt.Fprintf(&out, "%010d 00000 n \n", offset)
	}
	fmt.Fprintf(&out, "trailer\n%sstartxref\n%d\n%%%%EOF\n", foot, at)
	return out.Bytes()
}

// A squeezer compresses streams, one after the other in the same room.
type squeezer struct {
	out    bytes.Buffer
	writer *zlib.Writer
}

// squeeze returns an object with its stream compressed; one without a plain stream
// as it is.
func (s *squeezer) squeeze(object []byte) ([]byte, error) {
	head := plainStream.FindSubmatchIndex(object)
	if head == nil {
		return object, nil
	}
	length, err := strconv.Atoi(string(object[head[2]:head[3]]))
	if err != nil || head[1]+length > len(object) {
		return nil, errUnknownFile
	}
	s.out.Reset()
	if s.writer == nil {
		if s.writer, err = zlib.NewWriterLevel(&s.out, squeezeLevel); err != nil {
			return nil, err
		}
	} else {
		s.writer.Reset(&s.out)
	}
	_, err = s.writer.Write(object[head[1] : head[1]+length])
	if err = errors.Join(err, s.writer.Close()); err != nil {
		return nil, err
	}
	number, _, _ := bytes.Cut(object, []byte(" "))
	squeezed := fmt.Appendf(nil, "%s 0 obj\n<</Filter /FlateDecode /Length %d>>\nstream\n", number, s.out.Len())
	squeezed = append(squeezed, s.out.Bytes()...)
	return append(squeezed, object[head[1]+length:]...), nil
}

// squeezeLevel is how hard pages are compressed: higher ones take twice the time for
// a tenth less.
const squeezeLevel = zlib.BestSpeed
