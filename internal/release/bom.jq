# Adds to the bill of materials what no Go module says: the C library, SQLite inside its driver, the chart library.
def part($name; $version; $purl; $licence; $say): {
  "bom-ref": $purl, type: "library", name: $name, version: $version, description: $say, purl: $purl, scope: "required",
  licenses: [{license: $licence}]
};
.metadata.timestamp = $time
| .metadata.component.hashes = [{alg: "SHA-256", content: $sum}]
| [ part("glibc"; $libc; "pkg:deb/debian/glibc@\($libc)?arch=source"; {id: "LGPL-2.1-or-later"}; "Linked statically."),
    part("sqlite"; $sqlite; "pkg:generic/sqlite@\($sqlite)"; {id: "blessing"}; "Compiled from the module github.com/mattn/go-sqlite3."),
    part("echarts"; $echarts; "pkg:npm/echarts@\($echarts)"; {id: "Apache-2.0"}; "Served to the browser; has parts of d3 in it."),
    part("zrender"; $zrender; "pkg:npm/zrender@\($zrender)"; {id: "BSD-3-Clause"}; "Inside echarts.")
  ] as $more
| .metadata.component."bom-ref" as $main
# The detector of licences knows neither Go's own nor that of goose; their texts were read by us.
| .components |= map(
    if .name == "std" or (.name | startswith("golang.org/x/")) then del(.evidence) | .licenses = [{license: {id: "BSD-3-Clause"}}]
    elif .name == "github.com/pressly/goose/v3" then del(.evidence) | .licenses = [{license: {id: "MIT"}}]
    else . end)
| .components += $more
| .dependencies |= map(if .ref == $main then .dependsOn = ((.dependsOn // []) + ($more | map(."bom-ref")) | sort) else . end)
