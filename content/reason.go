package content

// Reason is why something has no figure, as the plan gives it: the name of the
// reason, what its text is about, and the reason that it is the cause of, if
// any.
type Reason interface {
	Because() (name string, about []string, causes string)
}

// Because is the text of a reason; empty where there is none.
func (w Words) Because(r Reason) string {
	name, about, causes := r.Because()
	if name == "" {
		return ""
	}
	text := w.Text("reason."+name, about...)
	if causes != "" {
		text = w.Text("reason."+causes, text)
	}
	return text
}

// Missing is what a figure waits for: the reason why there is none, or a field
// of a thing that is not given. Without a thing it is of the shop itself.
func (w Words) Missing(thing, field string, why Reason) string {
	switch because := w.Because(why); {
	case because != "" && thing == "":
		return w.Text("missing.shop-because", because)
	case because != "":
		return w.Text("missing.because", thing, because)
	case thing == "":
		return field
	}
	return w.Text("missing.field", field, thing)
}

// markKeys are the starts of the keys of the texts of marks.
var markKeys = map[string]string{"word": "mark.word.", "says": "mark.says.", "instead": "mark.instead."}

// Mark is a text of the mark of a figure: in a "word", what it "says" behind
// the figure, or what stands "instead" of a document.
func (w Words) Mark(which, mark string) string { return w.Text(markKeys[which] + mark) }
