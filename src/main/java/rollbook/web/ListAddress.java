package rollbook.web;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.web.util.UriComponentsBuilder;

/** The address of a list: a path, and what is asked of it by parameters, in their order. */
record ListAddress(String path, Map<String, String> parameters) {
    ListAddress at(String otherPath) {
        return new ListAddress(otherPath, parameters);
    }

    /** @param value empty to leave the parameter out */
    ListAddress with(String name, String value) {
        Map<String, String> others = new LinkedHashMap<>(parameters);
        others.remove(name);
        if (!value.isEmpty()) {
            others.put(name, value);
        }
        return new ListAddress(path, others);
    }

    ListAddress without(Collection<String> names) {
        Map<String, String> others = new LinkedHashMap<>(parameters);
        others.keySet().removeAll(names);
        return new ListAddress(path, others);
    }

    /** Encoded, for a link. */
    @Override
    public String toString() {
        UriComponentsBuilder address = UriComponentsBuilder.fromPath(path);
        parameters.keySet().forEach(name -> address.queryParam(name, "{" + name + "}"));
        return address.encode().buildAndExpand(parameters).toUriString();
    }
}
