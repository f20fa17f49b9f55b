//go:build linux && amd64

package store

import (
	"encoding/binary"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"unsafe"
)

// fileCall is one change that a traced process made to a file of the watched folder, or a line that it told.
type fileCall struct {
	name   string // write, sync, cut, unlink, rename, create, told
	path   string
	to     string
	offset int64 // for a cut: the new size
	data   []byte
}

// What the kernel says at a stop (ptrace(2), PTRACE_GET_SYSCALL_INFO): kind at byte 0; at the entry the call's number at
// byte 24 and its six arguments behind it; at the exit the result at byte 24.
const (
	getSyscallInfo = 0x420e
	atEntry        = 1
	atExit         = 2
	noOtherThreads = 0x20000000 // __WNOTHREAD of wait(2): no children of other threads, which other tests may wait for
	exitKill       = 0x100000   // PTRACE_O_EXITKILL
)

// traced runs a command to its end and returns what it did to the files in a folder, in order.
func traced(cmd *exec.Cmd, folder string) (calls []fileCall, err error) {
	return tracedAs(cmd, folder, func(fileCall) syscall.Errno { return 0 })
}

// tracedAs is traced where the system refuses some of the calls, those that read a file apart: refuse says with which error,
// 0 for none. A call that is refused is not carried out.
func tracedAs(cmd *exec.Cmd, folder string, refuse func(fileCall) syscall.Errno) (calls []fileCall, err error) {
	runtime.LockOSThread() // whoever starts a traced process is the one to trace it
	defer runtime.UnlockOSThread()
	cmd.SysProcAttr = &syscall.SysProcAttr{Ptrace: true}
	if err := cmd.Start(); err != nil {
		return nil, err
	}
	pid := cmd.Process.Pid
	var ws syscall.WaitStatus
	if _, err := syscall.Wait4(pid, &ws, 0, nil); err != nil {
		return nil, err
	}
	if err := syscall.PtraceSetOptions(pid, syscall.PTRACE_O_TRACESYSGOOD|syscall.PTRACE_O_TRACECLONE|exitKill); err != nil {
		return nil, err
	}
	memory, err := os.Open(fmt.Sprintf("/proc/%d/mem", pid))
	if err != nil {
		return nil, err
	}
	defer memory.Close()
	t := tracer{pid, memory, folder}
	pending := map[int]*fileCall{}
	refused := map[int]syscall.Errno{}
	for tid, signal := pid, 0; ; {
		_ = syscall.PtraceSyscall(tid, signal) // a thread that is gone is met again below
		if tid, err = syscall.Wait4(-1, &ws, syscall.WALL|noOtherThreads, nil); err != nil {
			return calls, err
		}
		signal = 0
		switch {
		case (ws.Exited() || ws.Signaled()) && tid == pid:
			if ws.ExitStatus() != 0 {
				err = fmt.Errorf("the traced process ended with %d", ws.ExitStatus())
			}
			return calls, err
		case !ws.Stopped():
		case ws.StopSignal() == syscall.SIGTRAP|0x80:
			var info [88]byte
			if _, _, no := syscall.Syscall6(syscall.SYS_PTRACE, getSyscallInfo, uintptr(tid), uintptr(len(info)), uintptr(unsafe.Pointer(&info)), 0, 0); no == syscall.ESRCH {
				break // its thread ended meanwhile
			} else if no != 0 {
				return calls, no
			}
			switch info[0] {
			case atEntry:
				pending[tid] = t.read(info[24:])
				c := t.opens(info[24:])
				if c == nil {
					c = pending[tid]
				}
				if c == nil || c.name == "told" {
					break
				}
				if no := refuse(*c); no != 0 {
					pending[tid], refused[tid] = nil, no
					if err := setRegisters(tid, func(r *syscall.PtraceRegs) { r.Orig_rax = ^uint64(0) }); err != nil && err != syscall.ESRCH { // no call has this number
						return calls, err
					}
				}
			case atExit:
				if no := refused[tid]; no != 0 {
					delete(refused, tid)
					if err := setRegisters(tid, func(r *syscall.PtraceRegs) { r.Rax = -uint64(no) }); err != nil && err != syscall.ESRCH {
						return calls, err
					}
				}
				if c := pending[tid]; c != nil && int64(binary.LittleEndian.Uint64(info[24:])) >= 0 {
					calls = append(calls, *c)
				}
				delete(pending, tid)
			}
		case ws.StopSignal() != syscall.SIGTRAP && ws.StopSignal() != syscall.SIGSTOP:
			signal = int(ws.StopSignal())
		}
	}
}

type tracer struct {
	pid    int
	memory *os.File
	folder string
}

// read makes out what a call is about to do; nil where it changes no file of ours.
func (t tracer) read(info []byte) *fileCall {
	arg := func(i int) uint64 { return binary.LittleEndian.Uint64(info[8*(i+1):]) }
	switch nr := binary.LittleEndian.Uint64(info); nr {
	case syscall.SYS_PWRITE64:
		return t.ours(fileCall{name: "write", path: t.open(arg(0)), offset: int64(arg(3)), data: t.bytes(arg(1), arg(2))})
	case syscall.SYS_WRITE:
		if arg(0) == 1 {
			return &fileCall{name: "told", data: t.bytes(arg(1), arg(2))}
		}
		return t.ours(fileCall{name: "plain write", path: t.open(arg(0))})
	case syscall.SYS_FSYNC, syscall.SYS_FDATASYNC:
		return t.ours(fileCall{name: "sync", path: t.open(arg(0))})
	case syscall.SYS_FTRUNCATE:
		return t.ours(fileCall{name: "cut", path: t.open(arg(0)), offset: int64(arg(1))})
	case syscall.SYS_UNLINK:
		return t.ours(fileCall{name: "unlink", path: t.text(arg(0))})
	case syscall.SYS_UNLINKAT:
		return t.ours(fileCall{name: "unlink", path: t.text(arg(1))})
	case syscall.SYS_RENAME:
		return t.ours(fileCall{name: "rename", path: t.text(arg(0)), to: t.text(arg(1))})
	case syscall.SYS_RENAMEAT:
		return t.ours(fileCall{name: "rename", path: t.text(arg(1)), to: t.text(arg(3))})
	case syscall.SYS_OPEN:
		return t.create(t.text(arg(0)), arg(1))
	case syscall.SYS_OPENAT:
		return t.create(t.text(arg(1)), arg(2))
	}
	return nil
}

// opens makes out whether a call opens a file of ours; nil where not.
func (t tracer) opens(info []byte) *fileCall {
	path := ""
	switch binary.LittleEndian.Uint64(info) {
	case syscall.SYS_OPEN:
		path = t.text(binary.LittleEndian.Uint64(info[8:]))
	case syscall.SYS_OPENAT:
		path = t.text(binary.LittleEndian.Uint64(info[16:]))
	default:
		return nil
	}
	return t.ours(fileCall{name: "open", path: path})
}

func setRegisters(tid int, set func(*syscall.PtraceRegs)) error {
	var r syscall.PtraceRegs
	if err := syscall.PtraceGetRegs(tid, &r); err != nil {
		return err
	}
	set(&r)
	return syscall.PtraceSetRegs(tid, &r)
}

func (t tracer) create(path string, flags uint64) *fileCall {
	if _, err := os.Lstat(path); flags&syscall.O_CREAT == 0 || err == nil {
		return nil
	}
	return t.ours(fileCall{name: "create", path: path})
}

func (t tracer) ours(c fileCall) *fileCall {
	if c.path != t.folder && !strings.HasPrefix(c.path, t.folder+"/") || strings.HasSuffix(c.path, "-shm") || filepath.Ext(c.path) == ".lock" {
		return nil
	}
	return &c
}

func (t tracer) open(fd uint64) string {
	path, _ := os.Readlink(fmt.Sprintf("/proc/%d/fd/%d", t.pid, int32(fd)))
	return path
}

func (t tracer) bytes(at, n uint64) []byte {
	b := make([]byte, n)
	n2, _ := t.memory.ReadAt(b, int64(at))
	return b[:n2]
}

func (t tracer) text(at uint64) string {
	text, _, _ := strings.Cut(string(t.bytes(at, 4096)), "\x00")
	return text
}
