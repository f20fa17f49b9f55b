package web

import (
	"mime"
	"net/http"

	"github.com/go-chi/chi/v5"

	"duskweight/web/host"
	"duskweight/web/page"
)

// Limits of what stands before the body of a request. More than mostHeaders is refused with a page's headers and a sentence.
// From headerLimit on net/http ends the connection with a 431 of its own, which nothing here can add to; it holds nothing of
// ours.
const (
	mostHeaders = 8 << 10
	headerLimit = 16 << 10
)

// policy lets a page load what this program serves and nothing else. There is no "unsafe-" in it: no inline script, no
// style attribute.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; " +
	"connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

// WithHeaders sets the headers that every answer carries, refusals too.
func WithHeaders(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("X-Frame-Options", "DENY")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Permissions-Policy", "camera=(), microphone=(), geolocation=(), payment=(), usb=(), serial=()")
		h.Set("Cache-Control", "no-store")
		next.ServeHTTP(w, r)
	})
}

// onlySmallHeaders answers 431 to a request with more before its body than a browser sends to this program by itself: cookies
// of every program that ever answered at this address are sent to us too.
func (s *Site) onlySmallHeaders(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		size := len(r.RequestURI) + len(r.Host)
		for name, values := range r.Header {
			for _, v := range values {
				size += len(name) + len(v) + len(": \r\n")
			}
		}
		if size > mostHeaders {
			s.Fail(w, r, page.ErrHeaders)
			return
		}
		next.ServeHTTP(w, r)
	})
}

// headAsGet looks up the page of a HEAD as that of a GET, in every room; net/http leaves its body out.
func headAsGet(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.Method == http.MethodHead {
			chi.RouteContext(r.Context()).RouteMethod = http.MethodGet
		}
		next.ServeHTTP(w, r)
	})
}

// onlyOwnPages answers 403 to a request that was sent by a page of another origin, if it may change something or if it is
// more than a link that was followed: a picture, a frame or a script of a stranger cannot make this program work. The
// browser says so in Sec-Fetch-Site or Origin; a program on this machine sends neither and passes.
func (s *Site) onlyOwnPages(next http.Handler) http.Handler {
	guard := http.NewCrossOriginProtection()
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if guard.Check(r) != nil || foreignOrigin(r) || foreignUse(r) {
			s.Fail(w, r, page.ErrForeignPage)
			return
		}
		next.ServeHTTP(w, r)
	})
}

// foreignOrigin reports whether a changing request names another origin than ours, whatever else it says about itself.
// "null" is no name: under our own referrer policy a browser sends it with our own forms, and then Sec-Fetch-Site has
// decided already.
func foreignOrigin(r *http.Request) bool {
	if safe(r.Method) {
		return false
	}
	origin := r.Header.Get("Origin")
	return origin != "" && origin != "null" && origin != "http://"+r.Host
}

// foreignUse reports whether another site, or another port of this machine, asks for something otherwise than by a link that
// was followed in a window (Fetch Metadata Request Headers, W3C).
func foreignUse(r *http.Request) bool {
	site := r.Header.Get("Sec-Fetch-Site")
	if site == "" || site == "same-origin" || site == "none" {
		return false
	}
	return r.Header.Get("Sec-Fetch-Mode") != "navigate" || r.Header.Get("Sec-Fetch-Dest") != "document"
}

// safe reports whether a method changes nothing.
func safe(method string) bool {
	return method == http.MethodGet || method == http.MethodHead || method == http.MethodOptions
}

// onlySmallForms limits the body and takes no other kind of body than a form's.
func (s *Site) onlySmallForms(limit int64) func(http.Handler) http.Handler {
	return func(next http.Handler) http.Handler {
		return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
			if !safe(r.Method) {
				kind, _, err := mime.ParseMediaType(r.Header.Get("Content-Type"))
				if err != nil || kind != "application/x-www-form-urlencoded" && kind != "multipart/form-data" {
					s.Fail(w, r, page.ErrNotAForm)
					return
				}
			}
			r.Body = http.MaxBytesReader(w, r.Body, limit)
			next.ServeHTTP(w, r)
		})
	}
}

// onlyOwnHost answers 421 to every request, of any method, that was sent to another name.
func (s *Site) onlyOwnHost(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if !host.Own(r.Host) {
			s.Fail(w, r, page.ErrWrongHost)
			return
		}
		next.ServeHTTP(w, r)
	})
}
