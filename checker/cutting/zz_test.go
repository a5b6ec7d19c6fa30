package cutting
import ("testing";"math/rand";"fmt";"context";"time")
func rnd(r *rand.Rand, n int, pitch float64, turn bool) order {
	o := order{board: Board{Width:600,Height:2400,Pitch:pitch,Turnable:turn}, kerf: 2}
	widths := []float64{38, 46, 150, 198, 280, 298, 300, 360, 400, 598, 600}
	heights := []float64{380, 398, 798, 1000, 1199, 1398, 2000, 2400}
	for i:=0;i<n;i++ {
		w:=widths[r.Intn(len(widths))]; h:=heights[r.Intn(len(heights))]
		b:=Blank{ID:fmt.Sprint("B",i),Height:h, End: r.Intn(4)==0}
		switch r.Intn(4){case 0: b.LeftEdge=true; b.RightEdge=w==600
		case 1: b.Left=600-w; b.RightEdge=true; b.LeftEdge=w==600
		default: b.Left=float64(r.Intn(int(600-w)+1))}
		b.Right=b.Left+w
		o.blanks=append(o.blanks,b)
	}
	return o
}
func TestZZ(t *testing.T){
	r:=rand.New(rand.NewSource(1))
	for _,n:=range []int{4,6,8,10,14,20,30,45,64} {
		var bound, better, raised, un int; var worst,tot time.Duration; gap:=0; abs:=0
		N:=200; if n>14 {N=40}
		for k:=0;k<N;k++{
			o:=rnd(r,n,[]float64{0,40,50}[r.Intn(3)],r.Intn(2)==0)
			s:=Usual(2); s.Nodes=0
			a,_:=Plan(context.Background(),o.board,o.blanks,nil,s)
			t0:=time.Now()
			b,_:=Plan(context.Background(),o.board,o.blanks,nil,Usual(2))
			d:=time.Since(t0); tot+=d; if d>worst{worst=d}
			if l:=wrong(o.board,o.blanks,nil,2,b); len(l)>0 {t.Error(l)}
			switch { case a.Proven: bound++; case !b.Proven: un++; gap+=b.Boards-b.Least
			}
			if b.Boards<a.Boards {better++}
			if b.Least>a.Least {raised++}
			abs+=b.Boards
		}
		fmt.Printf("n=%d N=%d provenByBound=%d better=%d raised=%d unproven=%d gap=%d boards=%d mean=%v worst=%v\n",n,N,bound,better,raised,un,gap,abs,tot/time.Duration(N),worst)
	}
}
