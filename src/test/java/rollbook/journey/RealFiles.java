package rollbook.journey;

import java.io.IOException;
import java.nio.file.FileVisitOption;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** Files that nobody of this project wrote, copied as a roll, and hashed by the system's own programs. */
final class RealFiles {
    private RealFiles() {}

    /** Copies every readable file below a folder, links followed, at most so many bytes. */
    static void copy(Path from, Path to, long atMostBytes) throws IOException {
        long copied = 0;
        try (Stream<Path> files = Files.walk(from, FileVisitOption.FOLLOW_LINKS)) {
            for (Path file : files.filter(Files::isRegularFile)
                    .filter(Files::isReadable)
                    .sorted()
                    .toList()) {
                long size = Files.size(file);
                if (copied + size <= atMostBytes) {
                    Path target = to.resolve(from.relativize(file).toString());
                    Files.createDirectories(target.getParent());
                    Files.copy(file, target);
                    copied += size;
                }
            }
        }
    }

    /** All files below, as paths relative to the folder. */
    static List<Path> list(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile)
                    .map(folder::relativize)
                    .sorted()
                    .toList();
        }
    }

    static boolean has(String program) {
        return Stream.of(System.getenv("PATH").split(java.io.File.pathSeparator))
                .anyMatch(folder -> Files.isExecutable(Path.of(folder, program)));
    }

    /**
     * Hashes everything below the folder with a program of the system and writes its list. The list is made from the
     * folder above, so that its paths name the medium: lists of equal copies would otherwise be the same document.
     */
    static Path hash(Path folder, Path list, String... program) throws IOException, InterruptedException {
        List<String> command = Stream.concat(
                        Stream.of("find", folder.getFileName().toString(), "-type", "f", "-exec"),
                        Stream.concat(Stream.of(program), Stream.of("{}", "+")))
                .toList();
        Process process = new ProcessBuilder(command)
                .directory(folder.getParent().toFile())
                .redirectOutput(list.toFile())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        if (!process.waitFor(300, TimeUnit.SECONDS) || process.exitValue() != 0) {
            throw new AssertionError(command + " failed");
        }
        return list;
    }

    static void flipOneByte(Path file) throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        bytes[bytes.length / 2] ^= 1;
        Files.write(file, bytes);
    }
}
