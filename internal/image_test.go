package internal_test

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// instructions of a Dockerfile that this one may use.
var instructions = []string{"FROM", "WORKDIR", "COPY", "RUN", "ENV", "VOLUME", "USER", "ENTRYPOINT", "CMD", "HEALTHCHECK", "LABEL", "ARG"}

var stageName = regexp.MustCompile(`^FROM \S+( AS ([a-z]+))?$`)

// Every line of the Dockerfile is an instruction that exists, each stage that is copied from was named before, the
// last stage is empty but for the program, and no user is root. The data lie in a volume, where the environment says, and the
// check of its health asks at the address where the program listens.
func TestDockerfile(t *testing.T) {
	text, err := os.ReadFile("../Dockerfile")
	if err != nil {
		t.Fatal(err)
	}
	var stages []string
	last, user := "", ""
	said := map[string]string{} // the last of each instruction
	for _, line := range strings.Split(strings.ReplaceAll(string(text), "\\\n", " "), "\n") {
		word, rest, _ := strings.Cut(strings.TrimSpace(line), " ")
		if word == "" || word[0] == '#' {
			continue
		}
		if !slices.Contains(instructions, word) {
			t.Errorf("%q is no instruction", word)
		}
		said[word] = rest
		switch word {
		case "FROM":
			m := stageName.FindStringSubmatch(line)
			if m == nil {
				t.Fatalf("cannot read %q", line)
			}
			stages = append(stages, m[2])
			last = rest
		case "COPY":
			if from, ok := strings.CutPrefix(rest, "--from="); ok {
				if name, _, _ := strings.Cut(from, " "); !slices.Contains(stages, name) {
					t.Errorf("copies from %q, which is no stage", name)
				}
			}
		case "USER":
			user = rest
		}
	}
	if last != "scratch" || user == "" || strings.HasPrefix(user, "0") || user == "root" {
		t.Errorf("the image is made from %q and runs as %q", last, user)
	}
	if data := said["VOLUME"]; data == "" || !strings.Contains(said["ENV"], "XDG_DATA_HOME="+data) {
		t.Errorf("the volume is %q, the environment %q", data, said["ENV"])
	}
	if said["ENTRYPOINT"] != `["/duskweight"]` || !strings.HasSuffix(said["HEALTHCHECK"], `CMD ["/duskweight", "alive"]`) ||
		!strings.HasPrefix(said["CMD"], `["serve", "-addr", "127.0.0.1:8807"`) { // alive asks at 8807 where nothing else is said
		t.Errorf("started with %s %s, asked with %s", said["ENTRYPOINT"], said["CMD"], said["HEALTHCHECK"])
	}
	mod, err := os.ReadFile("../go.mod")
	if err != nil {
		t.Fatal(err)
	}
	if version := regexp.MustCompile(`(?m)^go (\d+\.\d+)`).FindStringSubmatch(string(mod)); version == nil ||
		!strings.Contains(string(text), "golang:"+version[1]+"-") {
		t.Error("the image is built with another Go than go.mod asks for")
	}
}
