// Package facts holds what geometry works out from a plan and what rules see as
// input: documented Go types that are also JSON, with a schema made from them.
//
// Lengths are millimetres rounded to 0.01, areas square metres, volumes
// millilitres, x from a wall's left end and y from the floor, both as seen from
// the room. Facts have no opinion: a number here is neither good nor bad.
//
// Every list is sorted by id or in the order of the work, and related things
// come already paired (a joint carries both its edges, a pair of lines its
// offset), so that a rule reads one list and joins nothing. A property that is
// absent is one that the plan does not say; a rule answers "open" there.
package facts

// Facts is all that is known of one plan.
type Facts struct {
	Job      Job       `json:"job"`
	Walls    []Wall    `json:"walls"`
	Openings []Opening `json:"openings"`
	Leaves   []Leaf    `json:"leaves"`
	Doors    []Door    `json:"doors"`
	Runs     []Run     `json:"runs"`
	Pieces   []Piece   `json:"pieces"`
	Strips   []Strip   `json:"strips"`
	Legs     []Leg     `json:"legs"`
	Rips     []Rip     `json:"rips"`
	Edges    []Edge    `json:"edges"`
	Joints   []Joint   `json:"joints"`
	Jambs    []Jamb    `json:"jambs"`
	// CrossJoints is where the pieces of a course meet those of the course above.
	CrossJoints []CrossJoint `json:"cross_joints"`
	// Lines compares pieces whose slats should line up: over and under openings with those beside them, and a
	// closed leaf with what is above it.
	Lines    []LinePair  `json:"lines"`
	Headers  []Header    `json:"headers"`
	Fixings  []Fixing    `json:"fixings"`
	Zones    []Zone      `json:"zones"`
	Screws   []ScrewPath `json:"screws"`
	Counts   Counts      `json:"counts"`
	Sequence Sequence    `json:"sequence"`
	// Holes is where accessories come through the panels.
	Holes  []Hole   `json:"holes"`
	Boards []Boards `json:"boards"`
	// Cutting is the cutting plan, board by board; the plan's own is held against the same pieces in CutMisfits.
	Cutting    []Stock     `json:"cutting"`
	CutMisfits []CutMisfit `json:"cut_misfits"`
	// Measurements, surveys and closing pieces are of walls as they are on site.
	Measurements []Measurement `json:"measurements"`
	Surveys      []Survey      `json:"surveys"`
	Closings     []Closing     `json:"closings"`
	Corners      []Corner      `json:"corners"`
	// RevealLines compares a piece over an opening (Piece) with the strips on its head (Other).
	RevealLines []LinePair `json:"reveal_lines"`
	Installs    []Install  `json:"installs"`

	Adhesive *Adhesive `json:"adhesive,omitempty"`
}

// About says what a fact is about and where the plan says it. Every subject has one.
type About struct {
	ID string `json:"id"` // unique among facts of its kind
	At string `json:"at"` // JSON Pointer of its place in the plan
	On string `json:"on"` // the wall or leaf it belongs to ("east", "east/door/leaf"), "" for the whole plan
}

// Subject gives itself; it makes every fact that embeds About a subject.
func (a About) Subject() About { return a }

// Job is the plan as a whole. Its id is "plan".
type Job struct {
	About
	Country string `json:"country"` // "GB-ENG", "GB-WLS", "GB-SCT", "GB-NIR", "IE", "US", "other"
	RoomUse string `json:"room_use,omitempty"`
}

// Wall is a wall face that a run stands on.
type Wall struct {
	About
	Width          float64     `json:"width"`
	Height         float64     `json:"height"`
	Background     *Background `json:"background,omitempty"`
	ServicesStated bool        `json:"services_stated"`     // the plan has a list of accessories, empty or not
	Thickness      *float64    `json:"thickness,omitempty"` // of the whole wall
	Thin           *bool       `json:"thin,omitempty"`      // so thin that cables on its reverse count on this face; absent where its thickness is unsaid
	ReverseStated  bool        `json:"reverse_stated"`      // the plan has a list of accessories on the other face, empty or not
	Area           float64     `json:"area"`                // m², openings included
	Covered        float64     `json:"covered"`             // m² under pieces
}

// Background is what is behind the panels.
type Background struct {
	Kind        string  `json:"kind"`         // as in the plan, or "leaf"
	Lining      float64 `json:"lining"`       // plasterboard or plaster in front of the structure
	SolidWall   bool    `json:"solid_wall"`   // the structure is masonry
	Framed      bool    `json:"framed"`       // the structure is studs or battens with space between
	StudsStated bool    `json:"studs_stated"` // centres and first stud are known
}

// Opening is a door, window or hatch in a wall, or a pillar before it.
type Opening struct {
	About
	Kind   string  `json:"kind"`
	Left   float64 `json:"left"`
	Right  float64 `json:"right"`
	Bottom float64 `json:"bottom"`
	Top    float64 `json:"top"`
}

// Leaf is a door leaf, closed.
type Leaf struct {
	About
	Width      float64 `json:"width"`
	Height     float64 `json:"height"`
	Thickness  float64 `json:"thickness"`
	Clad       bool    `json:"clad"`                  // a run stands on it
	FireRating string  `json:"fire_rating,omitempty"` // as the plan has it; "none", "unknown" or a rating
}

// Run is panels set side by side.
type Run struct {
	About
	Panel     string  `json:"panel"`
	Pieces    int     `json:"pieces"` // in all, the parts of a divided panel each
	Left      float64 `json:"left"`   // left edge of its first piece from the left
	Right     float64 `json:"right"`  // right edge of its last
	BareLeft  float64 `json:"bare_left"`
	BareRight float64 `json:"bare_right"`
}

// Piece is one panel or part of one, in one piece, as it is fixed.
type Piece struct {
	About
	Run        string  `json:"run"`
	Panel      string  `json:"panel"`
	OnLeaf     bool    `json:"on_leaf"`
	Left       float64 `json:"left"`
	Right      float64 `json:"right"`
	Bottom     float64 `json:"bottom"`
	Top        float64 `json:"top"`
	CoverWidth float64 `json:"cover_width"`
	Height     float64 `json:"height"`
	Area       float64 `json:"area"` // m²
	// Ripped says that at least one long edge is sawn over the piece's whole height.
	Ripped   bool   `json:"ripped"`
	Notched  bool   `json:"notched"`
	InView   bool   `json:"in_view"`
	HiddenBy string `json:"hidden_by,omitempty"`
	// StatedWidth and Space are there where the plan gives a width: what it says, and what is free there.
	StatedWidth *float64 `json:"stated_width,omitempty"`
	Space       *float64 `json:"space,omitempty"`
	Excess      *float64 `json:"excess,omitempty"` // by how much the first exceeds the second, at least 0
	Narrowest   Narrow   `json:"narrowest"`
	Pattern     Pattern  `json:"pattern"`
	Outline     []Point  `json:"outline"` // anticlockwise, from its lowest leftmost corner
	Cutouts     []Cutout `json:"cutouts"` // openings wholly inside the piece
}

// Cutout is a hole in a piece, clockwise.
type Cutout struct {
	Outline []Point `json:"outline"`
}

// Narrow is the least horizontal width of a piece and the lowest height at which it has it; the tip that a raked end
// makes does not count, unless the piece is nothing else.
type Narrow struct {
	Width float64 `json:"width"`
	X     float64 `json:"x"` // left end of that width
	Y     float64 `json:"y"`
}

// Point is a place on a wall.
type Point struct {
	X float64 `json:"x"`
	Y float64 `json:"y"`
}

// Strip is a piece, or the part of a notched one, over or under an opening.
type Strip struct {
	About
	Piece   string  `json:"piece"`
	Opening string  `json:"opening"`
	Where   string  `json:"where"` // "over", "under"
	Height  float64 `json:"height"`
	InView  bool    `json:"in_view"`
}

// Leg is what stands directly beside an opening: a whole piece, or what is left of a notched one.
type Leg struct {
	About
	Piece   string  `json:"piece"`
	Opening string  `json:"opening"`
	Side    string  `json:"side"`  // of the opening: "left", "right"
	Width   float64 `json:"width"` // the least of it
	Y       float64 `json:"y"`     // lowest height at which it is so narrow
	Height  float64 `json:"height"`
	Notched bool    `json:"notched"` // the piece goes on over or under the opening
	Ripped  bool    `json:"ripped"`  // the piece has a long edge sawn over its whole height
	InView  bool    `json:"in_view"`
}

// Rip is an upright or leaning cut line in a piece: a rip over its whole height or the upright of a notch.
type Rip struct {
	About
	Piece     string  `json:"piece"`
	Side      string  `json:"side"`      // the side of the material that the cut is on: "left", "right"
	MadeBy    string  `json:"made_by"`   // "rip", "notch"
	X         float64 `json:"x"`         // of a leaning cut, where it runs deepest inside a slat
	IntoSlat  float64 `json:"into_slat"` // from the cut to the nearest edge of the slat it runs in, 0 in a space or on an edge
	SlatLeft  float64 `json:"slat_left"` // width left of that slat on this piece, 0 in a space or on an edge
	SlatWidth float64 `json:"slat_width"`
	InView    bool    `json:"in_view"`
}

// Edge is one straight edge of a piece.
type Edge struct {
	About
	Piece  string  `json:"piece"`
	Side   string  `json:"side"`    // the way it faces: "left", "right", "up", "down"
	MadeBy string  `json:"made_by"` // "tongue", "recess", "square", "end" (all from the factory), "rip", "crosscut", "notch"
	Cut    bool    `json:"cut"`
	From   Point   `json:"from"`
	To     Point   `json:"to"`
	Length float64 `json:"length"`
	Low    float64 `json:"low"`   // its lowest point above the floor
	High   float64 `json:"high"`  // its highest
	Meets  string  `json:"meets"` // "piece", "corner", "open corner", "open wall", "wall end", "ceiling", "floor", "skirting", "nib" (or a step of the outline), "opening", "architrave", "pillar", "leaf edge", "air"
	// Other is the piece or opening that it meets.
	Other string `json:"other,omitempty"`
	// Cover is "covered" (something stands in front of it), "bare", or "unsaid".
	Cover     string `json:"cover"`
	CoveredBy string `json:"covered_by,omitempty"`
	// Treatment is what the plan does with a bare edge: "trim", "return", "lining", "finish", "scribe", "none";
	// absent where the run says nothing of its cut edges.
	Treatment     string `json:"treatment,omitempty"`
	TreatmentWith string `json:"treatment_with,omitempty"`
	InView        bool   `json:"in_view"` // the piece is
}

// Joint is where two pieces of a run meet side by side.
type Joint struct {
	About
	Left         string  `json:"left"`  // the piece on the left
	Right        string  `json:"right"` // the piece on the right
	X            float64 `json:"x"`     // middle of the space between the cover edges
	Bottom       float64 `json:"bottom"`
	Top          float64 `json:"top"`
	LeftMadeBy   string  `json:"left_made_by"`  // the right edge of the piece on the left
	RightMadeBy  string  `json:"right_made_by"` // the left edge of the piece on the right
	HasInterlock bool    `json:"has_interlock"` // the product's edges hook into each other
	Interlocks   bool    `json:"interlocks"`    // these two do
	Apart        float64 `json:"apart"`         // space between the cover edges
	Gap          float64 `json:"gap"`           // between the last slat and the next across the joint
	PatternGap   float64 `json:"pattern_gap"`   // between two slats within a panel
	GapError     float64 `json:"gap_error"`     // how far the first is from the second, without sign
	InView       bool    `json:"in_view"`       // one of the two is
}

// Jamb is a side of an opening with the joint nearest to it in each run that passes it.
type Jamb struct {
	About
	Opening  string  `json:"opening"`
	Side     string  `json:"side"`
	X        float64 `json:"x"`
	Joint    string  `json:"joint"`
	Distance float64 `json:"distance"` // from the jamb line to the joint, without sign
	Where    string  `json:"where"`    // the joint lies "over the opening", "beside it", or "on the line"
	// FixingStated says that the plan states what holds both pieces at the joint.
	FixingStated bool `json:"fixing_stated"`
	// HeldBy counts the screws, upright beads and zigzags in the strip between the joint and the jamb line.
	HeldBy int `json:"held_by"`
}

// LinePair is two pieces whose slats should line up.
type LinePair struct {
	About
	Opening    string  `json:"opening"`
	Where      string  `json:"where"` // of the first: "over", "under", "leaf"
	Side       string  `json:"side"`  // of the opening that the second stands at, or "above" it
	Piece      string  `json:"piece"`
	Other      string  `json:"other"`
	Comparable bool    `json:"comparable"` // both have the same pitch and slat width
	Offset     float64 `json:"offset"`     // least sideways shift between the two patterns, without sign; 0 where not comparable
	Direction  string  `json:"direction"`  // the first lies to the "left" or "right" of the second, or "none"
	InView     bool    `json:"in_view"`
}

// Header is a head of an opening with the run that passes over it.
type Header struct {
	About
	Opening         string   `json:"opening"`
	Run             string   `json:"run"`
	Drop            *float64 `json:"drop,omitempty"`
	LiningStated    bool     `json:"lining_stated"`
	LiningClad      bool     `json:"lining_clad"`
	LiningThickness *float64 `json:"lining_thickness,omitempty"`
	ArchitraveStays bool     `json:"architrave_stays"`
}

// Fixing is what holds one piece.
type Fixing struct {
	About
	Piece      string      `json:"piece"`
	OnLeaf     bool        `json:"on_leaf"`
	PieceSize  Size        `json:"piece_size"`
	Stated     bool        `json:"stated"`
	Background *Background `json:"background,omitempty"`
	Bead       *Bead       `json:"bead,omitempty"`   // absent: no adhesive
	Screws     *Screws     `json:"screws,omitempty"` // absent: no screws
}

// Size is a width and a height.
type Size struct {
	Width  float64 `json:"width"`
	Height float64 `json:"height"`
}

// Bead is the adhesive behind one piece.
type Bead struct {
	Zigzag   *float64 `json:"zigzag,omitempty"`
	FromEdge *float64 `json:"from_edge,omitempty"`
	Around   string   `json:"around,omitempty"` // "none", "top and sides", "all four edges"
	Centre   bool     `json:"centre"`
	Length   float64  `json:"length"`           // of all beads
	Volume   *float64 `json:"volume,omitempty"` // ml, absent where the bead's diameter is unsaid
}

// Screws is the screws of one piece.
type Screws struct {
	PerTop    int      `json:"per_top"`    // in the row at the top
	PerBottom int      `json:"per_bottom"` // in the rows at the bottom of each part that reaches it, the least
	Count     int      `json:"count"`
	RowGap    float64  `json:"row_gap"` // the widest between two rows
	Length    *float64 `json:"length,omitempty"`
	Colour    string   `json:"colour,omitempty"`
	OnStuds   bool     `json:"on_studs"` // the plan sets them on the studs
	// Into is what the screws reach: "masonry", "wood", "leaf", "space", or "studs unsaid"; each with the extremes.
	Into       []Into   `json:"into"`
	PlugStated bool     `json:"plug_stated"`
	PlugBit    string   `json:"plug_bit,omitempty"`
	PlugLength *float64 `json:"plug_length,omitempty"`
	Places     []Screw  `json:"places"`
	// Over all of them, mm; each is absent where there is none that it could be measured on.
	NearestEdge *float64 `json:"nearest_edge,omitempty"` // the least distance from an edge of the piece
	OnSlat      int      `json:"on_slat"`                // how many stand on a slat's face for want of a space between two
	WorstStud   *float64 `json:"worst_stud,omitempty"`   // the greatest distance from the middle of the nearest stud or batten
	PlugApart   *float64 `json:"plug_apart,omitempty"`   // the least from one of its plugs to any other on the wall
	// PlugEdge is the least distance of a plug from an edge of the masonry: an opening's, as far as its lining's face
	// (0 in the opening), or the wall's end at an external corner.
	PlugEdge *float64 `json:"plug_edge,omitempty"`
}

// Into gathers the screws of a piece that reach the same thing.
type Into struct {
	What  string   `json:"what"`
	Count int      `json:"count"`
	Depth *float64 `json:"depth,omitempty"` // how far they go into it; absent where the length is unsaid
	Spare *float64 `json:"spare,omitempty"` // what is left of a leaf's thickness behind the point
}

// Screw is one screw.
type Screw struct {
	X      float64  `json:"x"`
	Y      float64  `json:"y"`
	Into   string   `json:"into"`
	InWall *float64 `json:"in_wall,omitempty"` // from the wall's or leaf's face to the point
}

// Zone is a strip of wall in which cables are likely, with the screws that fall in it.
type Zone struct {
	About
	Why       string      `json:"why"` // what makes it likely
	Left      float64     `json:"left"`
	Right     float64     `json:"right"`
	Bottom    float64     `json:"bottom"`
	Top       float64     `json:"top"`
	Screws    int         `json:"screws"`
	Pieces    []string    `json:"pieces"`            // those that the screws hold
	Deepest   *float64    `json:"deepest,omitempty"` // how far the deepest goes into the wall; absent where there is none or its length is unsaid
	DepthSaid bool        `json:"depth_said"`
	Places    []ZoneScrew `json:"places"` // those screws, for drawings
}

// Sequence is the order of the work. Its id is "sequence".
type Sequence struct {
	About
	Stated bool   `json:"stated"`
	Steps  []Step `json:"steps"`
	// Traced says that a step of tracing cables comes before the first step that makes holes in a wall
	// (drill, screw), or that there is one and no such step is listed.
	Traced bool `json:"traced"`
	// Holes says that the plan makes holes: a step says so, or a piece has screws.
	Holes bool `json:"holes"`
}

// Step is one step.
type Step struct {
	Do    string   `json:"do"`
	Hours *float64 `json:"hours,omitempty"`
}

// Boards is what is needed of one product.
type Boards struct {
	About
	Panel string `json:"panel"`
	// Needed is the fresh boards of the cutting plan found: with kerf, slats upright, factory edges where they are
	// wanted, and offcuts in stock used first. A piece takes the rectangle round it: what a notch leaves goes to no
	// other. No such plan takes fewer than Least; where Proven, the two are one.
	Needed  int     `json:"needed"`
	Least   int     `json:"least"`
	Proven  bool    `json:"proven"`
	Offcuts int     `json:"offcuts"` // used
	Kerf    float64 `json:"kerf"`
	Ordered *int    `json:"ordered,omitempty"`
	Stated  *int    `json:"stated,omitempty"` // fresh boards in the plan's own cutting plan
}

// Adhesive is what is needed of it in all. Its id is "adhesive".
type Adhesive struct {
	About
	Length     float64  `json:"length"`               // mm of bead
	Volume     *float64 `json:"volume,omitempty"`     // ml; absent where a bead's diameter is unsaid
	Cartridge  *float64 `json:"cartridge,omitempty"`  // ml; absent where unsaid or where runs use different ones
	Ordered    *float64 `json:"ordered,omitempty"`    // ml
	Cartridges *int     `json:"cartridges,omitempty"` // ordered
}
