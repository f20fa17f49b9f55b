package web

import (
	"net/http"
	"strings"

	"github.com/go-chi/chi/v5"
	"github.com/go-chi/chi/v5/middleware"
)

// Handler is the whole list of addresses. Nothing that is fetched by GET changes anything.
func (s *Site) Handler() http.Handler {
	r := chi.NewRouter()
	r.Use(withHeaders, s.onlyOwnHost, s.onlyOwnPages, middleware.GetHead)
	r.NotFound(s.page(func(http.ResponseWriter, *http.Request) error { return errNotFound }))
	r.MethodNotAllowed(s.page(func(http.ResponseWriter, *http.Request) error { return errWrongMethod }))

	r.Get("/static/*", s.page(s.serveAsset))

	r.Group(func(r chi.Router) { // files that are read in
		r.Use(s.onlySmallForms(importLimit))
		r.Post("/import", s.page(s.importProject))
	})
	r.Group(func(r chi.Router) {
		r.Use(s.onlySmallForms(weatherLimit))
		r.Post("/projects/{project}/place/file", s.page(s.readWeather))
	})
	r.Group(func(r chi.Router) {
		r.Use(s.onlySmallForms(formLimit))
		r.Get("/", s.page(s.showProjects))
		r.Post("/sample", s.page(s.addSample))

		r.Get("/start", s.page(s.showStart))
		r.Post("/start", s.page(s.makeStart))
		r.Get("/help", s.page(s.showGuide))
		r.Get("/help/{topic}", s.page(s.showTopic))

		r.Get("/settings", s.page(s.showSettings))
		r.Post("/settings", s.page(s.saveSettings))
		r.Post("/settings/copy", s.page(s.makeCopy))
		r.Post("/settings/download", s.page(s.downloadAll))
		r.Get("/settings/copies/{copy}", s.page(s.downloadCopy))
		r.Post("/settings/copies/{copy}/restore", s.page(s.restoreCopy))

		r.Get("/projects/{project}", s.page(s.showOverview))
		editorAt(r, s, "/projects/{project}/place", s.placeEditor)
		r.Post("/projects/{project}/place/climate", s.page(s.takeClimate))
		r.Get("/projects/{project}/place/file", s.page(s.showWeather))
		r.Post("/projects/{project}/place/file/columns", s.page(s.mapWeather))
		r.Post("/projects/{project}/place/file/use", s.page(s.useWeather))
		editorAt(r, s, "/projects/{project}/load", s.loadEditor)
		r.Get("/shelf", s.page(s.showAnyShelf))
		editorAt(r, s, "/projects/{project}/shelf", s.shelfEditor)
		r.Post("/projects/{project}/shelf/put", s.page(s.shelveHoist))
		r.Get("/projects/{project}/shelf/fits", s.page(s.showFits))
		r.Post("/projects/{project}/shelf/use", s.page(s.useFit))
		r.Get("/projects/{project}/compare", s.page(s.showCompare))
		r.Get("/projects/{project}/compare/costs.csv", s.page(s.sendCompareCSV))
		editorAt(r, s, "/projects/{project}/money", s.moneyEditor)
		r.Get("/projects/{project}/place/{picture}.csv", s.page(s.sendPlaceCSV))
		r.Get("/projects/{project}/load/{picture}.csv", s.page(s.sendLoadCSV))
		r.Get("/projects/{project}/sure", s.page(s.showSure))
		r.Get("/projects/{project}/sure/years.csv", s.page(s.sendYearsCSV))
		r.Get("/projects/{project}/sure/many", s.page(s.sendSure))
		r.Get("/projects/{project}/sure/said", s.page(s.sendRange))
		r.Post("/projects/{project}/variants", s.page(s.addVariant))
		r.Route("/projects/{project}/variants/{variant}", func(r chi.Router) {
			editorAt(r, s, "/", s.wholeVariantEditor)
			r.Post("/stores", s.page(s.changeStores))
			r.Post("/delete", s.page(s.deleteVariant))
			for _, i := range []string{"", "/{i}"} { // without a number: the first of the variant
				editorAt(r, s, "/hoist"+i, s.hoistEditor)
				editorAt(r, s, "/cells"+i, s.cellsEditor)
				editorAt(r, s, "/trials"+i, s.trialsEditor)
			}
			r.Get("/hoist/{i}/pictures", s.page(s.showPictures))
			r.Post("/hoist/{i}/pictures", s.page(s.tryPictures))
			r.Get("/hoist/{i}/motor", s.page(s.showMotor))
			r.Get("/hoist/{i}/{picture}.csv", s.page(s.sendHoistCSV))
			r.Post("/trials/{i}/measured", s.page(s.useMeasured))
			r.Get("/trials/{i}/records.csv", s.page(s.sendTrialsCSV))
			r.Get("/hoist/{i}/rows", s.page(s.showRows))
			r.Post("/hoist/{i}/take", s.page(s.takeRow))
			r.Get("/takes", s.page(s.showTakes))
			r.Get("/sweep", s.page(s.showSweep))
			r.Get("/sweep.csv", s.page(s.sendSweepCSV))
			r.Get("/sweep-lines.csv", s.page(s.sendContoursCSV))
			editorAt(r, s, "/parts", s.partsEditor)
			r.Get("/parts/costs.csv", s.page(s.sendPartsCSV))
			r.Get("/parts/market", s.page(s.showMarket))
			r.Get("/parts/making", s.page(s.showMaking))
			r.Get("/{picture}.csv", s.page(s.sendVariantCSV))
			r.Get("/sure", s.page(s.showVariantSure))
			r.Post("/sure", s.page(s.tryVariantSure))
			r.Get("/sheet", s.page(s.showSheet))
			r.Get("/sheet/wiring", s.page(s.showWiring))
			r.Get("/sheet/checks", s.page(s.showCheckList))
		})
		r.Get("/projects/{project}/export.json", s.page(s.exportProject))
		r.Get("/projects/{project}/history", s.page(s.showHistory))
		r.Post("/projects/{project}/delete", s.page(s.deleteProject))
		r.Post("/projects/{project}/restore", s.page(s.restoreProject))
		r.Post("/projects/{project}/undo", s.page(s.undo))
		r.Post("/projects/{project}/redo", s.page(s.redo))
	})
	return r
}

// editorAt hangs a page with a form at an address: GET shows it, POST saves it, POST …/try computes only.
func editorAt[T any](r chi.Router, s *Site, at string, open func(*http.Request) (editor[T], error)) {
	do := func(answer func(*Site, http.ResponseWriter, *http.Request, editor[T]) error) http.HandlerFunc {
		return s.page(func(w http.ResponseWriter, r *http.Request) error {
			e, err := open(r)
			if err != nil {
				return err
			}
			return answer(s, w, r, e)
		})
	}
	r.Get(at, do(showEditor[T]))
	r.Post(at, do(saveEditor[T]))
	r.Post(strings.TrimSuffix(at, "/")+"/try", do(tryEditor[T]))
}
