// Package plan turns a valid document into the plan that geometry works on:
// every length in millimetres, every default filled in, every name looked up.
// What the plan leaves unsaid stays unsaid (a nil pointer or an empty string):
// a rule answers "open" there, nothing is guessed.
package plan

// Defaults for what a plan need not say, in millimetres. Each is common
// practice without a published source; the schema says so beside the property.
const (
	DefaultBoard     = 12.5 // plasterboard thickness
	DefaultPlaster   = 13.0 // plaster coat
	DefaultStudWidth = 38.0 // face of a stud or batten
	DefaultBatten    = 25.0 // batten thickness
	DefaultFromEnd   = 50.0 // first row of screws from a piece's end
	DefaultFromEdge  = 50.0 // outer screws from a piece's side
)

// Plan is a plan in millimetres, degrees, kilograms and millilitres. Every part
// carries At, the JSON Pointer of its place in the document.
type Plan struct {
	Title  string
	Job    Job
	Units  string // "mm" or "in": how the reader wants lengths written
	Panels []*Panel
	Walls  []*Wall
	Runs   []*Run
	Steps  []Step // in order
	// StepsStated is false where the plan has no sequence at all.
	StepsStated bool
	Order       Order
}

// Job is where and by whom.
type Job struct {
	At                                       string
	Room, RoomUse, PreparedBy, Date, Country string
}

// Panel is a product.
type Panel struct {
	At, Name                         string
	Width, Height, Thickness         float64
	Mass                             float64 // kg a board, 0 where unsaid
	Pitch, SlatWidth, First, Backing float64
	LeftEdge, RightEdge              string // "recess", "tongue", "square"
	Overlap                          float64
}

// Interlocks says whether the right edge of one panel hooks with the left edge of the next.
func (p *Panel) Interlocks() bool {
	return p.LeftEdge == "recess" && p.RightEdge == "tongue" || p.LeftEdge == "tongue" && p.RightEdge == "recess"
}

// Wall is a wall face seen from the room.
type Wall struct {
	At, Name          string
	Width, Height     float64
	Background        *Background // nil where unsaid
	LeftCorner        string      // "internal", "external", "none", "" where unsaid
	RightCorner       string
	SkirtingHeight    float64 // 0 where there is none
	SkirtingThickness float64
	Openings          []*Opening
	Services          []Service
	ServicesStated    bool // false where the plan has no list of services
}

// Background is what the wall is made of.
type Background struct {
	At, Kind          string
	Lining            float64 // plasterboard or plaster in front of the structure, 0 where none
	StudCentres       *float64
	FirstStud         *float64
	StudWidth, Batten float64
}

// Opening is a door, window or hatch.
type Opening struct {
	At, Name, Kind           string
	Wall                     *Wall
	X, Width, Sill, Head     float64
	ArchitraveWidth          float64 // 0 where none is stated
	ArchitraveStays          bool
	LiningStated, LiningClad bool
	LiningThickness          *float64
	Leaf                     *Leaf
}

// Right is the right jamb.
func (o *Opening) Right() float64 { return o.X + o.Width }

// Leaf is a door leaf, closed.
type Leaf struct {
	At                       string
	Opening                  *Opening
	Width, Height, Thickness float64
	SideGap, FloorGap        float64
	FireRating               string // "" where unsaid
}

// Path names the leaf as a run's surface: WALL/OPENING/leaf.
func (l *Leaf) Path() string { return l.Opening.Wall.Name + "/" + l.Opening.Name + "/leaf" }

// Service is an accessory on the wall.
type Service struct {
	At, ID, Kind        string
	X, Y, Width, Height float64
}

// Run is panels set side by side on a wall or a leaf.
type Run struct {
	At, ID, On     string
	Wall           *Wall
	Leaf           *Leaf // nil on a wall
	Panel          *Panel
	FromRight      bool
	Start, Joint   float64
	Base, ClearTop float64
	Height         *float64
	HeadDrop       *float64
	Pieces         []Piece // empty: as many as it takes
	Fix            *Fix
	CutEdges       map[string]Treatment // by place: head, jambs, sill, left, right, top, bottom
	CutEdgesStated bool
}

// Piece is a piece that the plan spells out.
type Piece struct {
	At, ID   string
	Width    *float64
	Cut      string // "left", "right", "" where unsaid
	Gap      *float64
	HiddenBy string
	Fix      *Fix
}

// Fix is what holds a piece.
type Fix struct {
	At       string
	Adhesive *Adhesive
	Screws   *Screws
}

// Adhesive is laid in beads.
type Adhesive struct {
	At                     string
	Bead, Zigzag, FromEdge *float64
	Around                 string // "none", "top and sides", "all four edges", "" where unsaid
	CentreLine             bool
	Cartridge              *float64 // ml
}

// Screws go through the backing.
type Screws struct {
	At                string
	PerEnd            int
	RowsApart         *float64
	FromEnd, FromEdge float64
	OnStuds           bool
	Length            *float64
	Colour            string
	Plug              *Plug
}

// Plug is set in a solid wall.
type Plug struct {
	Length *float64
	Bit    string // "masonry", "wood", "metal", "" where unsaid
}

// Treatment is what covers or finishes an edge.
type Treatment struct {
	At, By, With string
}

// Step is a step of the job.
type Step struct {
	At, Do string
	Hours  *float64
}

// Order is what has been ordered.
type Order struct {
	At         string
	Boards     map[string]int // by panel name
	Cartridges *int
}
