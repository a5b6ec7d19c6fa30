package facts

import (
	"fmt"
	"reflect"
	"strings"
)

// Schema gives the JSON Schema of the facts, made from the Go types. Rules are
// compiled against it, so that a misspelt fact does not compile.
func Schema() map[string]any {
	s := schemaOf(reflect.TypeFor[Facts]())
	s["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	s["title"] = "Facts of a plan"
	return s
}

func schemaOf(t reflect.Type) map[string]any {
	switch t.Kind() {
	case reflect.Pointer:
		return schemaOf(t.Elem())
	case reflect.Struct:
		props, required := map[string]any{}, []any{}
		for _, f := range reflect.VisibleFields(t) {
			name, options, _ := strings.Cut(f.Tag.Get("json"), ",")
			if f.Anonymous || name == "" {
				continue
			}
			props[name] = schemaOf(f.Type)
			if !strings.Contains(options, "omitempty") {
				required = append(required, name)
			}
		}
		return map[string]any{"type": "object", "additionalProperties": false, "properties": props, "required": required}
	case reflect.Slice:
		return map[string]any{"type": "array", "items": schemaOf(t.Elem())}
	case reflect.String:
		return map[string]any{"type": "string"}
	case reflect.Bool:
		return map[string]any{"type": "boolean"}
	case reflect.Int:
		return map[string]any{"type": "integer"}
	case reflect.Float64:
		return map[string]any{"type": "number"}
	}
	panic(fmt.Sprintf("facts cannot hold a %s", t)) // a mistake in this package, found by its first test
}
