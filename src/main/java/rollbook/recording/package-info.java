/** What a camera writes: picture, coding, frame rate and sound give exact bytes for a frame, a minute and a card. */
@NullMarked
@ApplicationModule(allowedDependencies = {"quantity"})
package rollbook.recording;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
