package workbook

// lenderPages are the pages by which a renovation loan is asked for and drawn.
func (b *book) lenderPages() {
	lines := b.breakdownPage()
	b.drawsPage(lines)
	b.attachmentsPage(lines)
}
