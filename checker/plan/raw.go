package plan

// mm is a length of the document, in millimetres once it is decoded.
type mm float64

// longest is what the schema lets a bare number come to: a million inches. The
// schema cannot hold a text against it, and a board a light-year wide has too many slats to count.
const longest = 25_400_000

// count is a whole number; the schema lets it be written 8.0 too.
type count int

// The raw types mirror the schema, name for name.
type (
	rawPlan struct {
		Title  string              `json:"title"`
		Job    rawJob              `json:"job"`
		Units  string              `json:"units"`
		Panels map[string]rawPanel `json:"panels"`
		Walls  map[string]rawWall  `json:"walls"`
		Runs   []rawRun            `json:"runs"`
		Steps  *[]rawStep          `json:"sequence"`
		Order  rawOrder            `json:"order"`
		Saw    struct {
			Kind string `json:"kind"`
			Kerf *mm    `json:"kerf"`
		} `json:"saw"`
		Cutting *[]struct {
			Panel   string     `json:"panel"`
			Offcut  string     `json:"offcut"`
			Lengths [][]string `json:"lengths"`
		} `json:"cutting"`
	}
	rawOrder struct {
		Boards     map[string]count `json:"boards"`
		Cartridges *count           `json:"cartridges"`
		Screws     *count           `json:"screws"`
		Plugs      *count           `json:"plugs"`
		Trim       *mm              `json:"trim"`
		Offcuts    []struct {
			ID     string `json:"id"`
			Panel  string `json:"panel"`
			Width  mm     `json:"width"`
			Height mm     `json:"height"`
			Keeps  string `json:"keeps"`
		} `json:"offcuts"`
	}
	rawJob struct {
		Room       string `json:"room"`
		RoomUse    string `json:"room_use"`
		PreparedBy string `json:"prepared_by"`
		Date       string `json:"date"`
		Country    string `json:"country"`
	}
	rawPanel struct {
		Width     mm      `json:"width"`
		Height    mm      `json:"height"`
		Thickness mm      `json:"thickness"`
		Mass      float64 `json:"mass"`
		Turnable  bool    `json:"turnable"`
		Slats     struct {
			Pitch mm `json:"pitch"`
			Width mm `json:"width"`
			First mm `json:"first"`
		} `json:"slats"`
		Backing struct {
			Thickness mm `json:"thickness"`
		} `json:"backing"`
		Edges *struct {
			Left    string `json:"left"`
			Right   string `json:"right"`
			Overlap mm     `json:"overlap"`
		} `json:"edges"`
	}
	rawWall struct {
		Width      mm             `json:"width"`
		Height     mm             `json:"height"`
		Outline    []rawCorner    `json:"outline"`
		Thickness  *mm            `json:"thickness"`
		Reverse    *[]rawService  `json:"reverse"`
		Measured   *rawMeasured   `json:"measured"`
		Background *rawBackground `json:"background"`
		Ends       struct {
			Left  rawEnd `json:"left"`
			Right rawEnd `json:"right"`
		} `json:"ends"`
		Skirting struct {
			Height    mm `json:"height"`
			Thickness mm `json:"thickness"`
		} `json:"skirting"`
		Openings map[string]rawOpening `json:"openings"`
		Services *[]rawService         `json:"services"`
	}
	rawCorner struct {
		X mm `json:"x"`
		Y mm `json:"y"`
	}
	rawMeasured struct {
		Widths struct {
			Floor   *mm `json:"floor"`
			Middle  *mm `json:"middle"`
			Ceiling *mm `json:"ceiling"`
		} `json:"widths"`
		Heights []struct {
			X      mm `json:"x"`
			Height mm `json:"height"`
		} `json:"heights"`
		OutOfPlumb struct {
			Left  *mm `json:"left"`
			Right *mm `json:"right"`
		} `json:"out_of_plumb"`
		Flatness *mm `json:"flatness"`
	}
	rawBackground struct {
		Kind        string `json:"kind"`
		Board       *mm    `json:"board"`
		Plaster     *mm    `json:"plaster"`
		StudCentres *mm    `json:"stud_centres"`
		FirstStud   *mm    `json:"first_stud"`
		StudWidth   *mm    `json:"stud_width"`
		Batten      *mm    `json:"batten"`
	}
	rawEnd struct {
		Corner string `json:"corner"`
		Wall   string `json:"wall"`
	}
	rawOpening struct {
		Kind  string `json:"kind"`
		X     mm     `json:"x"`
		Width mm     `json:"width"`
		Head  mm     `json:"head"`
		Sill  mm     `json:"sill"`
		Frame struct {
			Architrave struct {
				Width   mm   `json:"width"`
				Removed bool `json:"removed"`
			} `json:"architrave"`
			Depth *mm `json:"depth"`
			Stop  *mm `json:"stop"`
		} `json:"frame"`
		Lining *struct {
			Clad      bool   `json:"clad"`
			Thickness *mm    `json:"thickness"`
			Panel     string `json:"panel"`
			Start     *mm    `json:"start"`
		} `json:"lining"`
		Leaf *rawLeaf `json:"leaf"`
	}
	rawLeaf struct {
		Width     mm      `json:"width"`
		Height    mm      `json:"height"`
		Thickness mm      `json:"thickness"`
		FloorGap  *mm     `json:"floor_gap"`
		SideGap   *mm     `json:"side_gap"`
		Core      string  `json:"core"`
		Mass      float64 `json:"mass"`
		Hardware  float64 `json:"hardware"`
		Opens     string  `json:"opens"`
		Hinges    *struct {
			Side      string `json:"side"`
			Proud     *mm    `json:"proud"`
			FromEdge  mm     `json:"from_edge"`
			Grade     count  `json:"grade"`
			MassGrade count  `json:"mass_grade"`
			Count     count  `json:"count"`
		} `json:"hinges"`
		Closer *struct {
			Size      count `json:"size"`
			Backcheck bool  `json:"backcheck"`
		} `json:"closer"`
		Furniture struct {
			Fits      *mm `json:"fits"`
			Handle    *mm `json:"handle"`
			StandsOut mm  `json:"stands_out"`
		} `json:"furniture"`
		FloorCovering mm     `json:"floor_covering"`
		SideWall      *mm    `json:"side_wall"`
		OtherCladding mm     `json:"other_cladding"`
		FireRating    string `json:"fire_rating"`
	}
	rawService struct {
		ID     string `json:"id"`
		Kind   string `json:"kind"`
		X      mm     `json:"x"`
		Y      mm     `json:"y"`
		Width  mm     `json:"width"`
		Height mm     `json:"height"`
	}
	rawRun struct {
		ID       string     `json:"id"`
		On       string     `json:"on"`
		Panel    string     `json:"panel"`
		From     string     `json:"from"`
		Centre   string     `json:"centre"`
		Start    mm         `json:"start"`
		Joint    mm         `json:"joint"`
		Base     mm         `json:"base"`
		ClearTop mm         `json:"clear_top"`
		Height   *mm        `json:"height"`
		HeadDrop *mm        `json:"head_drop"`
		Pieces   []rawPiece `json:"pieces"`
		FixedIn  []string   `json:"fixed_in"`
		Courses  []struct {
			Height *mm `json:"height"`
			Start  *mm `json:"start"`
			Gap    mm  `json:"gap"`
		} `json:"courses"`
		Fix      *rawFix                  `json:"fix"`
		CutEdges *map[string]rawTreatment `json:"cut_edges"`
	}
	rawPiece struct {
		ID       string  `json:"id"`
		Width    *mm     `json:"width"`
		Cut      string  `json:"cut"`
		Gap      *mm     `json:"gap"`
		HiddenBy string  `json:"hidden_by"`
		WidthTop *mm     `json:"width_top"`
		Turned   bool    `json:"turned"`
		Scribed  bool    `json:"scribed"`
		Fix      *rawFix `json:"fix"`
	}
	rawFix struct {
		Adhesive *struct {
			Bead       *mm      `json:"bead"`
			Zigzag     *mm      `json:"zigzag"`
			FromEdge   *mm      `json:"from_edge"`
			Around     string   `json:"around"`
			CentreLine bool     `json:"centre_line"`
			Cartridge  *float64 `json:"cartridge"`
		} `json:"adhesive"`
		Screws *struct {
			PerEnd    count  `json:"per_end"`
			RowsApart *mm    `json:"rows_apart"`
			FromEnd   *mm    `json:"from_end"`
			FromEdge  *mm    `json:"from_edge"`
			OnStuds   bool   `json:"on_studs"`
			Length    *mm    `json:"length"`
			Colour    string `json:"colour"`
			Plug      *struct {
				Length *mm    `json:"length"`
				Bit    string `json:"bit"`
			} `json:"plug"`
		} `json:"screws"`
	}
	rawTreatment struct {
		By   string `json:"by"`
		With string `json:"with"`
	}
	rawStep struct {
		Do    string   `json:"do"`
		Hours *float64 `json:"hours"`
	}
)
