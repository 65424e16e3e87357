-- A sound roll has no picture: width and height are both zero.
alter table format_recording_format
    drop constraint format_recording_format_width_photosites_check,
    drop constraint format_recording_format_height_photosites_check,
    add constraint format_recording_format_picture
        check ((width_photosites > 0 and height_photosites > 0) or (width_photosites = 0 and height_photosites = 0));
