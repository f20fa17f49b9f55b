package lift

import "duskweight/internal/model/unit"

// Container is what holds a loose mass together.
type Container struct {
	Kind      ContainerKind             `json:"kind" say:"Container of the mass" enum:"|none_one_block|bag|drum|cage|crate|home_sewn"`
	Rating    unit.Known[unit.Force]    `json:"working_load_n" say:"Its rated working load" range:"(0,1e8]"`
	Factor    unit.Known[unit.Ratio]    `json:"safety_factor" say:"Safety factor on its label: 5, 6 or 8" range:"[1,20]"`
	Age       unit.Known[unit.Duration] `json:"in_use_s" say:"How long it has been in use" range:"[0,3.2e9]"`
	EyeRating unit.Known[unit.Force]    `json:"eye_working_load_n" say:"Working load of the eye or lug on the mass" range:"(0,1e8]"`
}

// ContainerKind is what holds the mass together.
type ContainerKind string

// The words of ContainerKind.
const (
	ContainerNoneOneBlock ContainerKind = "none_one_block"
	ContainerBag          ContainerKind = "bag"
	ContainerDrum         ContainerKind = "drum"
	ContainerCage         ContainerKind = "cage"
	ContainerCrate        ContainerKind = "crate"
	ContainerHomeSewn     ContainerKind = "home_sewn"
)
