module trammel

go 1.26.8

require (
	codeberg.org/go-fonts/stix v0.3.0 // indirect
	github.com/ajstarks/svgo v0.0.0-20211024235047-1546f124cd8b // indirect
	github.com/alecthomas/kong v1.17.0 // indirect
	github.com/alecthomas/participle/v2 v2.1.4 // indirect
	github.com/fsnotify/fsnotify v1.10.1 // indirect
	github.com/rogpeppe/go-internal v1.16.0 // indirect
	golang.org/x/image v0.47.0 // indirect
	golang.org/x/sync v0.25.0 // indirect
	golang.org/x/sys v0.50.0 // indirect
	golang.org/x/term v0.48.0 // indirect
	golang.org/x/text v0.43.0 // indirect
	golang.org/x/tools v0.51.0 // indirect
	pgregory.net/rapid v1.3.0 // indirect
)
