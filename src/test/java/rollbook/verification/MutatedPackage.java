package rollbook.verification;

import java.io.IOException;
import java.io.InputStream;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.lang.reflect.Constructor;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileObject;
import javax.tools.SimpleJavaFileObject;
import javax.tools.ToolProvider;

/** Loads this package once more, tests included, with some lines of its sources changed. */
final class MutatedPackage extends ClassLoader {
    private static final String PACKAGE = MutatedPackage.class.getPackageName() + ".";

    private final Map<String, byte[]> changed;

    private MutatedPackage(Map<String, byte[]> changed) {
        super(MutatedPackage.class.getClassLoader());
        this.changed = changed;
    }

    /** @throws AssertionError if a text to be changed isn't there exactly once, or the changed source doesn't compile */
    static GateWorld with(List<GateMutant.Edit> edits) {
        try {
            Constructor<?> world = new MutatedPackage(compile(edits))
                    .loadClass(PACKAGE + "GateWorldHere")
                    .getDeclaredConstructor();
            world.setAccessible(true);
            return (GateWorld) world.newInstance();
        } catch (ReflectiveOperationException e) {
            throw new AssertionError(e);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Map<String, byte[]> compile(List<GateMutant.Edit> edits) throws IOException {
        Map<String, String> sources = new LinkedHashMap<>();
        for (GateMutant.Edit edit : edits) {
            String source = sources.containsKey(edit.file())
                    ? sources.get(edit.file())
                    : Files.readString(Path.of(edit.file()));
            int at = source.indexOf(edit.from());
            if (at < 0 || source.indexOf(edit.from(), at + 1) >= 0) {
                throw new AssertionError("not once in " + edit.file() + ": " + edit.from());
            }
            sources.put(edit.file(), source.replace(edit.from(), edit.to()));
        }
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        Path folder = Files.createTempDirectory("mutant");
        StringWriter said = new StringWriter();
        List<String> options = List.of(
                "-nowarn",
                "-proc:none",
                "-parameters",
                "-d",
                folder.toString(),
                "-cp",
                System.getProperty("java.class.path"));
        List<JavaFileObject> units = new ArrayList<>();
        sources.forEach((file, text) -> units.add(new Source(file, text)));
        if (!compiler.getTask(said, null, null, options, null, units).call()) {
            throw new AssertionError(said.toString());
        }
        return classesIn(folder);
    }

    private static Map<String, byte[]> classesIn(Path folder) throws IOException {
        Map<String, byte[]> classes = new HashMap<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(java.util.Comparator.reverseOrder()).toList()) {
                if (Files.isRegularFile(file)) {
                    String name = folder.relativize(file).toString().replace('/', '.');
                    classes.put(name.substring(0, name.length() - ".class".length()), Files.readAllBytes(file));
                }
                Files.delete(file);
            }
        }
        return classes;
    }

    @Override
    protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
        boolean shared = name.equals(PACKAGE + "GateStage")
                || name.startsWith(PACKAGE + "GateWorld") && !name.endsWith("Here") && !name.contains("Here$");
        if (!name.startsWith(PACKAGE) || shared) {
            return super.loadClass(name, resolve);
        }
        synchronized (getClassLoadingLock(name)) {
            Class<?> loaded = findLoadedClass(name);
            return loaded == null ? define(name) : loaded;
        }
    }

    private Class<?> define(String name) throws ClassNotFoundException {
        byte[] code = changed.get(name);
        if (code == null) {
            try (InputStream in = getResourceAsStream(name.replace('.', '/') + ".class")) {
                if (in == null) {
                    throw new ClassNotFoundException(name);
                }
                code = in.readAllBytes();
            } catch (IOException e) {
                throw new ClassNotFoundException(name, e);
            }
        }
        return defineClass(name, code, 0, code.length);
    }

    private static final class Source extends SimpleJavaFileObject {
        private final String text;

        Source(String file, String text) {
            super(URI.create("string:///" + file), Kind.SOURCE);
            this.text = text;
        }

        @Override
        public CharSequence getCharContent(boolean ignoreEncodingErrors) {
            return text;
        }
    }
}
