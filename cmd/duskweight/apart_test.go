package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"html"
	"io"
	"mime/multipart"
	"net/http"
	"net/url"
	"os"
	"os/exec"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
)

// asProgram makes this test program the whole of Duskweight: its main, its command line, a process of its own.
const asProgram = "DUSKWEIGHT_TEST_PROGRAM"

func init() {
	if os.Getenv(asProgram) != "" {
		main()
	}
}

// often is how often a random check is done: so many times in an ordinary run, so many in a long one, or a share of these
// with DUSKWEIGHT_TORTURE=0.05.
func often(usual, long int) int {
	torture := os.Getenv("DUSKWEIGHT_TORTURE")
	if torture == "" {
		return usual
	}
	if share, err := strconv.ParseFloat(torture, 64); err == nil && share > 0 && share < 1 {
		return max(usual, int(share*float64(long)))
	}
	return long
}

// apart is a running program in a process of its own, and a connection to it.
type apart struct {
	cmd    *exec.Cmd
	url    string // without a slash at its end
	client *http.Client
}

// startApart starts the program on a data folder and waits for its address.
func startApart(t *testing.T, data string) *apart {
	t.Helper()
	cmd := exec.Command(os.Args[0], "serve", "-addr", "127.0.0.1:0", "-data", data, "-no-browser")
	cmd.Env = append(os.Environ(), asProgram+"=1")
	cmd.Stderr = t.Output()
	out, err := cmd.StdoutPipe()
	if err == nil {
		err = cmd.Start()
	}
	if err != nil {
		t.Fatal(err)
	}
	a := &apart{cmd: cmd, client: &http.Client{
		Transport:     &http.Transport{MaxIdleConnsPerHost: 64},
		Timeout:       time.Minute,
		CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse },
	}}
	t.Cleanup(a.kill)
	lines := bufio.NewScanner(out)
	for lines.Scan() {
		if rest, ok := strings.CutPrefix(lines.Text(), "Duskweight: "); ok {
			a.url = strings.TrimSuffix(rest, "/")
			break
		}
	}
	if a.url == "" {
		t.Fatalf("the program gives no address: %v", cmd.Wait())
	}
	return a
}

// kill ends the process as a cut of the power or its owner would, and waits for its end.
func (a *apart) kill() {
	if a.cmd.ProcessState == nil {
		_ = a.cmd.Process.Kill()
		_ = a.cmd.Wait()
	}
	a.client.CloseIdleConnections()
}

// reply is what came back.
type reply struct {
	code int
	to   string // where a redirect leads
	body string
}

func (a *apart) send(method, at, kind string, body io.Reader, headers ...string) (reply, error) {
	r, err := http.NewRequest(method, a.url+at, body)
	if err != nil {
		return reply{}, err
	}
	if kind != "" {
		r.Header.Set("Content-Type", kind)
	}
	for i := 0; i+1 < len(headers); i += 2 {
		if headers[i] == "Host" {
			r.Host = headers[i+1]
			continue
		}
		r.Header.Set(headers[i], headers[i+1])
	}
	got, err := a.client.Do(r)
	if err != nil {
		return reply{}, err
	}
	text, err := io.ReadAll(got.Body)
	return reply{got.StatusCode, got.Header.Get("Location"), string(text)}, errors.Join(err, got.Body.Close())
}

func (a *apart) get(at string) (reply, error) { return a.send("GET", at, "", nil) }

func (a *apart) post(at string, form url.Values) (reply, error) {
	return a.send("POST", at, "application/x-www-form-urlencoded", strings.NewReader(form.Encode()))
}

// upload sends a file in a form.
func (a *apart) upload(at, field, name, text string) (reply, error) {
	var b bytes.Buffer
	m := multipart.NewWriter(&b)
	part, err := m.CreateFormFile(field, name)
	if err == nil {
		_, err = io.WriteString(part, text)
	}
	if err = errors.Join(err, m.Close()); err != nil {
		return reply{}, err
	}
	return a.send("POST", at, m.FormDataContentType(), &b)
}

var (
	aForm      = regexp.MustCompile(`(?s)<form\b[^>]*action="([^"?]*)[^"]*"[^>]*>(.*?)</form>`)
	aField     = regexp.MustCompile(`(?s)<input\b[^>]*>|<textarea\b[^>]*>.*?</textarea>|<select\b[^>]*>.*?</select>`)
	anAttr     = regexp.MustCompile(`\b([a-z]+)="([^"]*)"`)
	theChosen  = regexp.MustCompile(`<option value="([^"]*)"[^>]* selected`)
	whatInside = regexp.MustCompile(`(?s)^[^>]*>(.*)</textarea>$`)
)

// formAt is the form of a page with an address and a field, as a browser sends it without a change.
func formAt(body, action, has string) (url.Values, error) {
	for _, f := range aForm.FindAllStringSubmatch(body, -1) {
		if f[1] != action || !strings.Contains(f[2], `name="`+has+`"`) {
			continue
		}
		sent := url.Values{}
		for _, field := range aField.FindAllString(f[2], -1) {
			have := map[string]string{}
			tag, _, _ := strings.Cut(field, ">")
			for _, m := range anAttr.FindAllStringSubmatch(tag, -1) {
				have[m[1]] = html.UnescapeString(m[2])
			}
			value := have["value"]
			switch {
			case have["name"] == "":
				continue
			case strings.HasPrefix(field, "<select"):
				if m := theChosen.FindStringSubmatch(field); m != nil {
					value = html.UnescapeString(m[1])
				}
			case strings.HasPrefix(field, "<textarea"):
				value = html.UnescapeString(whatInside.FindStringSubmatch(field)[1])
			case slices.Contains([]string{"checkbox", "radio"}, have["type"]) && !strings.Contains(tag, " checked"):
				continue
			}
			sent.Set(have["name"], value)
		}
		return sent, nil
	}
	return nil, fmt.Errorf("no form for %s with %s", action, has)
}

// exported is what the tests look at in an exported project.
type exported struct {
	Project struct {
		Name string `json:"name"`
	} `json:"project"`
	Variants []struct {
		Name   string `json:"name"`
		Stores []struct {
			Hoist *struct {
				Travel float64 `json:"travel_m"`
			} `json:"hoist"`
		} `json:"stores"`
	} `json:"variants"`
}

// export reads a project as it is stored; there is none where it was deleted.
func (a *apart) export(project string) (doc exported, text string, there bool, err error) {
	got, err := a.get(project + "/export.json")
	switch {
	case err != nil:
		return doc, "", false, err
	case got.code == http.StatusNotFound:
		return doc, "", false, nil
	case got.code != http.StatusOK:
		return doc, "", false, fmt.Errorf("%s: %d", project, got.code)
	}
	return doc, got.body, true, json.Unmarshal([]byte(got.body), &doc)
}
