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
	Saw         Saw
	Cutting     []CutBoard // the plan's own cutting plan, board by board
	// CuttingStated is false where the plan leaves the cutting plan to be worked out.
	CuttingStated bool
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
	Turnable                         bool // a board may be turned end for end
}

// Interlocks says whether the right edge of one panel hooks with the left edge of the next.
func (p *Panel) Interlocks() bool {
	return p.LeftEdge == "recess" && p.RightEdge == "tongue" || p.LeftEdge == "tongue" && p.RightEdge == "recess"
}

// Wall is a wall face seen from the room.
type Wall struct {
	At, Name          string
	Width, Height     float64
	Outline           []Corner // nil: a rectangle; anticlockwise
	Thickness         *float64
	Reverse           []Service // accessories on the other face, in this face's coordinates
	ReverseStated     bool
	Measured          *Measured   // nil where nothing was measured
	Background        *Background // nil where unsaid
	LeftCorner        string      // "internal", "external", "none", "" where unsaid
	RightCorner       string
	LeftWall          string // the walls met at its ends, "" where unsaid
	RightWall         string
	SkirtingHeight    float64 // 0 where there is none
	SkirtingThickness float64
	Openings          []*Opening
	Services          []Service
	ServicesStated    bool // false where the plan has no list of services
}

// Corner is a corner of a wall's outline.
type Corner struct{ X, Y float64 }

// Measured is what the tape says; nil where it was not put.
type Measured struct {
	At                     string
	Floor, Middle, Ceiling *float64 // widths
	Heights                []MeasuredHeight
	PlumbLeft, PlumbRight  *float64 // how far the top of the end lies to the right of its bottom
	Flatness               *float64 // worst gap under a 2 m straightedge
}

// MeasuredHeight is a height at one place.
type MeasuredHeight struct{ X, Height float64 }

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
	LiningPanel              *Panel   // nil where unsaid
	LiningStart              *float64 // at the head
	FrameDepth, Stop         *float64
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
	FireRating               string   // "" where unsaid
	Core                     string   // "solid", "hollow", "panelled", "unknown", "" where unsaid
	Mass, Hardware           float64  // kg; Mass 0 where unsaid
	Opens                    string   // "towards", "away", "" where unsaid
	Hinges                   *Hinges  // nil where unsaid
	Closer                   *Closer  // nil where there is none
	Fits, Handle             *float64 // greatest thickness that the furniture takes; the grip's distance from the bare face
	StandsOut                float64  // what furniture takes of the way through
	FloorCovering            float64
	SideWall                 *float64 // from the hinge jamb's face; nil where there is none
	OtherCladding            float64
}

// Hinges are what a leaf turns on.
type Hinges struct {
	At        string
	Side      string   // "left", "right"
	Proud     *float64 // axis in front of the pull face
	FromEdge  float64  // from the leaf's hinge edge to the axis, towards the jamb
	Grade     int      // hinge grade, EN 1935: 1 to 14; 0 where unsaid
	MassGrade int      // door mass grade, EN 1935: 1 to 7; 0 where unsaid
	Count     int      // 0 where unsaid
}

// Closer closes a door.
type Closer struct {
	At        string
	Size      int // EN 1154, 0 where unsaid
	Backcheck bool
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
	From           string // "left", "right", "middle", "line"
	Centre         string // "joint", "panel": what lies on the middle or the line
	Start, Joint   float64
	Base, ClearTop float64
	Height         *float64
	HeadDrop       *float64
	Pieces         []Piece  // empty: as many as it takes
	Courses        []Course // at least one
	FixedIn        []string // names in the order of fixing; nil: as they are set
	Fix            *Fix
	CutEdges       map[string]Treatment // by place: head, jambs, sill, left, right, top, bottom
	CutEdgesStated bool
}

// FromRight says whether distances count from the right end.
func (r *Run) FromRight() bool { return r.From == "right" }

// Course is one course of a run.
type Course struct {
	At         string
	Height     *float64
	Start, Gap float64
}

// Piece is a piece that the plan spells out.
type Piece struct {
	At, ID   string
	Width    *float64
	Cut      string // "left", "right", "" where unsaid
	Gap      *float64
	HiddenBy string
	WidthTop *float64 // of a tapered piece
	Turned   bool
	Scribed  bool
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
	Screws     *int
	Plugs      *int
	Trim       *float64
	Offcuts    []Offcut
}

// Offcut is a piece of board left from another job.
type Offcut struct {
	At, ID        string
	Panel         *Panel
	Width, Height float64
	Keeps         string // "left", "right", "none": the long edge from the factory that it still has
}

// Saw is how boards are cut.
type Saw struct {
	Kind string   // "portable", "bench", "" where unsaid
	Kerf *float64 // nil where unsaid
}

// CutBoard is one board of the plan's own cutting plan.
type CutBoard struct {
	At      string
	Panel   *Panel
	Offcut  string     // its name where an offcut is used
	Lengths [][]string // names of pieces, from the lower end up and from the left
}
