package report

// fixings prints what is counted of screws, plugs, trims and finish.
func (t Takeoff) fixings(p *printer) {}

func (t Takeoff) fixingRows(row func(...string)) {}
