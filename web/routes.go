package web

import (
	"net/http"

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
		r.Get("/projects/{project}/place", s.page(s.showPlace))
		r.Post("/projects/{project}/place", s.page(s.savePlace))
		r.Post("/projects/{project}/place/try", s.page(s.tryPlace))
		r.Post("/projects/{project}/place/climate", s.page(s.takeClimate))
		r.Get("/projects/{project}/place/file", s.page(s.showWeather))
		r.Post("/projects/{project}/place/file/columns", s.page(s.mapWeather))
		r.Post("/projects/{project}/place/file/use", s.page(s.useWeather))
		r.Get("/projects/{project}/load", s.page(s.showLoad))
		r.Post("/projects/{project}/load", s.page(s.saveLoad))
		r.Post("/projects/{project}/load/try", s.page(s.tryLoad))
		r.Get("/projects/{project}/compare", s.page(s.showCompare))
		r.Get("/projects/{project}/compare/costs.csv", s.page(s.sendCompareCSV))
		r.Get("/projects/{project}/money", s.page(s.showMoney))
		r.Post("/projects/{project}/money", s.page(s.saveMoney))
		r.Post("/projects/{project}/money/try", s.page(s.tryMoney))
		r.Get("/projects/{project}/sure", s.page(s.showSure))
		r.Get("/projects/{project}/sure/many", s.page(s.sendSure))
		r.Get("/projects/{project}/sure/said", s.page(s.sendRange))
		r.Post("/projects/{project}/variants", s.page(s.addVariant))
		r.Route("/projects/{project}/variants/{variant}", func(r chi.Router) {
			r.Get("/", s.page(s.showVariant))
			r.Post("/", s.page(s.saveVariant))
			r.Post("/try", s.page(s.tryVariant))
			r.Post("/stores", s.page(s.changeStores))
			r.Post("/delete", s.page(s.deleteVariant))
			for _, i := range []string{"", "/{i}"} { // without a number: the first of the variant
				r.Get("/hoist"+i, s.page(s.showHoist))
				r.Post("/hoist"+i, s.page(s.saveHoist))
				r.Post("/hoist"+i+"/try", s.page(s.tryHoist))
				r.Get("/cells"+i, s.page(s.showCells))
				r.Post("/cells"+i, s.page(s.saveCells))
				r.Post("/cells"+i+"/try", s.page(s.tryCells))
			}
			r.Get("/hoist/{i}/pictures", s.page(s.showPictures))
			r.Post("/hoist/{i}/pictures", s.page(s.tryPictures))
			r.Get("/hoist/{i}/motor", s.page(s.showMotor))
			r.Get("/hoist/{i}/{picture}.csv", s.page(s.sendHoistCSV))
			for _, i := range []string{"", "/{i}"} {
				r.Get("/trials"+i, s.page(s.showTrials))
				r.Post("/trials"+i, s.page(s.saveTrials))
				r.Post("/trials"+i+"/try", s.page(s.tryTrials))
			}
			r.Post("/trials/{i}/measured", s.page(s.useMeasured))
			r.Get("/trials/{i}/records.csv", s.page(s.sendTrialsCSV))
			r.Get("/hoist/{i}/rows", s.page(s.showRows))
			r.Post("/hoist/{i}/take", s.page(s.takeRow))
			r.Get("/takes", s.page(s.showTakes))
			r.Get("/sweep", s.page(s.showSweep))
			r.Get("/parts", s.page(s.showParts))
			r.Post("/parts", s.page(s.saveParts))
			r.Post("/parts/try", s.page(s.tryParts))
			r.Get("/parts/costs.csv", s.page(s.sendPartsCSV))
			r.Get("/parts/market", s.page(s.showMarket))
			r.Get("/parts/making", s.page(s.showMaking))
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
