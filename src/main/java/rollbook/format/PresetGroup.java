package rollbook.format;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import rollbook.recording.Preset;
import rollbook.recording.Presets;

/** The presets that come from one standard. */
record PresetGroup(String standard, List<Preset> presets) {

    static List<PresetGroup> all() {
        Map<String, List<Preset>> byStandard = Presets.all().stream()
                .collect(Collectors.groupingBy(Preset::standard, LinkedHashMap::new, Collectors.toList()));
        return byStandard.entrySet().stream()
                .map(group -> new PresetGroup(group.getKey(), group.getValue()))
                .toList();
    }
}
