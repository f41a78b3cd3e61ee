package pricebook

// Categories are the lines of a renovation lender's draw request, in its order: HUD form
// HUD-9746-A. That there are 35 is published; names and order are from memory.
var Categories = []string{
	"Masonry", "Siding", "Gutters and downspouts", "Roof", "Shutters", "Exteriors", "Walks", "Driveways", "Painting (exterior)", "Caulking", "Fencing",
	"Grading and landscaping", "Windows", "Weatherstripping", "Doors (exterior)", "Doors (interior)", "Partition walls", "Plaster/drywall", "Decorating",
	"Wood trim", "Stairs", "Closets", "Wood floors", "Finished floors", "Ceramic tile", "Bath accessories", "Plumbing", "Electrical", "Heating",
	"Insulation", "Cabinetry", "Appliances", "Basements", "Cleanup", "Miscellaneous",
}
