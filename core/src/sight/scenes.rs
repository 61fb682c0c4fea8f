//! Everyday scenes in which a key is seen: cameras and distances as data. Every figure is an
//! assumption of ours about ordinary equipment, meant to be on the cautious side.

use super::camera::{Camera, FrameShape};
use crate::assumptions::{Figure, Unit};
use crate::sources;
use crate::units::{Metres, Millimetres};

/// A scene: a kind of camera in its usual use. Words for it are found by matching on this.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Scene {
    /// A phone's main camera at the next table.
    PhoneAtNextTable,
    /// The same camera across a room, in poorer light.
    PhoneAcrossRoom,
    /// The same camera through a shop window.
    PhoneThroughWindow,
    /// A phone's long lens from across a street.
    PhoneZoomAcrossStreet,
    /// A key held up for a picture that is then shared, made smaller by the service.
    SharedPicture,
    /// A key lying in a picture of a room in a sale or letting advertisement.
    SaleListing,
    /// A doorbell camera, a key being turned in front of it.
    DoorbellCamera,
    /// A key lying in view of a video call.
    VideoCall,
    /// A key on a desk in a broadcast from home, by a better camera.
    DeskStream,
    /// A surveillance camera in a lobby or garage.
    SurveillanceCamera,
    /// A pocket camera with a long zoom.
    PocketZoom,
    /// A long lens across a street or from a roof.
    LongLens,
    /// A television camera near a person who wears the key.
    TelevisionCamera,
}

/// One of the figures of a scene.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Property {
    /// Focal length, full-frame equivalent.
    EquivalentFocalLength,
    /// Pixels across the picture.
    PixelsAcross,
    /// Width on full frame of a picture of this shape.
    FrameWidth,
    /// Width of the lens's opening.
    Aperture,
    /// Contrast over noise, per pixel and frame.
    ContrastToNoise,
    /// How far the key's image moves during the exposure.
    Smear,
    /// Frames that can be taken together.
    Frames,
    /// The distance at which the scene usually plays.
    UsualDistance,
}

struct Row {
    id: &'static str,
    camera: Camera,
    usual: Metres,
}

impl Scene {
    /// Every scene, in the order in which a page lists them.
    pub const ALL: [Self; 13] = [
        Self::PhoneAtNextTable,
        Self::PhoneAcrossRoom,
        Self::PhoneThroughWindow,
        Self::PhoneZoomAcrossStreet,
        Self::SharedPicture,
        Self::SaleListing,
        Self::DoorbellCamera,
        Self::VideoCall,
        Self::DeskStream,
        Self::SurveillanceCamera,
        Self::PocketZoom,
        Self::LongLens,
        Self::TelevisionCamera,
    ];

    /// Stable name for files and examples.
    pub const fn id(self) -> &'static str {
        self.row().id
    }

    /// The scene with this [`Scene::id`].
    pub fn from_id(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|scene| scene.id() == id)
    }

    /// The scene's camera.
    pub const fn camera(self) -> &'static Camera {
        &self.row().camera
    }

    /// The distance at which the scene usually plays.
    pub const fn usual_distance(self) -> Metres {
        self.row().usual
    }

    /// Every figure of the scene with its unit and source, for a page to list.
    pub fn figures(self) -> [(Property, Figure); 8] {
        let row = self.row();
        let camera = &row.camera;
        let figure = |property, value, unit| {
            let source = &sources::EVERYDAY_SCENES;
            (
                property,
                Figure {
                    value,
                    unit,
                    source,
                },
            )
        };
        [
            figure(
                Property::EquivalentFocalLength,
                camera.equivalent_focal_length.get(),
                Unit::Millimetres,
            ),
            figure(
                Property::PixelsAcross,
                f64::from(camera.pixels_across),
                Unit::Pixels,
            ),
            figure(
                Property::FrameWidth,
                camera.frame.width_on_full_frame().get(),
                Unit::Millimetres,
            ),
            figure(Property::Aperture, camera.aperture.get(), Unit::Millimetres),
            figure(
                Property::ContrastToNoise,
                camera.contrast_to_noise,
                Unit::Ratio,
            ),
            figure(Property::Smear, camera.smear.get(), Unit::Millimetres),
            figure(Property::Frames, f64::from(camera.frames), Unit::Count),
            figure(Property::UsualDistance, row.usual.get(), Unit::Metres),
        ]
    }

    const fn row(self) -> &'static Row {
        match self {
            Self::PhoneAtNextTable => &PHONE_AT_NEXT_TABLE,
            Self::PhoneAcrossRoom => &PHONE_ACROSS_ROOM,
            Self::PhoneThroughWindow => &PHONE_THROUGH_WINDOW,
            Self::PhoneZoomAcrossStreet => &PHONE_ZOOM_ACROSS_STREET,
            Self::SharedPicture => &SHARED_PICTURE,
            Self::SaleListing => &SALE_LISTING,
            Self::DoorbellCamera => &DOORBELL_CAMERA,
            Self::VideoCall => &VIDEO_CALL,
            Self::DeskStream => &DESK_STREAM,
            Self::SurveillanceCamera => &SURVEILLANCE_CAMERA,
            Self::PocketZoom => &POCKET_ZOOM,
            Self::LongLens => &LONG_LENS,
            Self::TelevisionCamera => &TELEVISION_CAMERA,
        }
    }
}

/// A phone's main camera, whole picture kept.
const PHONE: Camera = Camera {
    equivalent_focal_length: Millimetres::literal(26.0),
    pixels_across: 4032,
    frame: FrameShape::FourToThree,
    aperture: Millimetres::literal(3.2),
    contrast_to_noise: 20.0,
    smear: Millimetres::literal(0.1),
    frames: 1,
};

static PHONE_AT_NEXT_TABLE: Row = Row {
    id: "phone-at-next-table",
    camera: PHONE,
    usual: Metres::literal(1.0),
};

static PHONE_ACROSS_ROOM: Row = Row {
    id: "phone-across-room",
    camera: Camera {
        contrast_to_noise: 10.0,
        smear: Millimetres::literal(0.3),
        ..PHONE
    },
    usual: Metres::literal(4.0),
};

static PHONE_THROUGH_WINDOW: Row = Row {
    id: "phone-through-window",
    camera: Camera {
        contrast_to_noise: 6.0,
        smear: Millimetres::literal(0.2),
        ..PHONE
    },
    usual: Metres::literal(2.5),
};

static PHONE_ZOOM_ACROSS_STREET: Row = Row {
    id: "phone-zoom-across-street",
    camera: Camera {
        equivalent_focal_length: Millimetres::literal(120.0),
        aperture: Millimetres::literal(6.0),
        contrast_to_noise: 10.0,
        smear: Millimetres::literal(0.5),
        ..PHONE
    },
    usual: Metres::literal(12.0),
};

static SHARED_PICTURE: Row = Row {
    id: "shared-picture",
    camera: Camera {
        pixels_across: 1440,
        smear: Millimetres::literal(0.05),
        ..PHONE
    },
    usual: Metres::literal(0.4),
};

static SALE_LISTING: Row = Row {
    id: "sale-listing",
    camera: Camera {
        equivalent_focal_length: Millimetres::literal(18.0),
        pixels_across: 1600,
        frame: FrameShape::ThreeToTwo,
        aperture: Millimetres::literal(4.0),
        contrast_to_noise: 10.0,
        smear: Millimetres::literal(0.05),
        frames: 1,
    },
    usual: Metres::literal(2.0),
};

static DOORBELL_CAMERA: Row = Row {
    id: "doorbell-camera",
    camera: Camera {
        equivalent_focal_length: Millimetres::literal(14.0),
        pixels_across: 1920,
        frame: FrameShape::SixteenToNine,
        aperture: Millimetres::literal(1.0),
        contrast_to_noise: 10.0,
        smear: Millimetres::literal(1.0),
        frames: 4,
    },
    usual: Metres::literal(0.7),
};

static VIDEO_CALL: Row = Row {
    id: "video-call",
    camera: Camera {
        equivalent_focal_length: Millimetres::literal(28.0),
        pixels_across: 1280,
        frame: FrameShape::SixteenToNine,
        aperture: Millimetres::literal(1.5),
        contrast_to_noise: 8.0,
        smear: Millimetres::literal(0.3),
        frames: 4,
    },
    usual: Metres::literal(0.7),
};

static DESK_STREAM: Row = Row {
    id: "desk-stream",
    camera: Camera {
        equivalent_focal_length: Millimetres::literal(35.0),
        pixels_across: 1920,
        frame: FrameShape::SixteenToNine,
        aperture: Millimetres::literal(8.0),
        contrast_to_noise: 12.0,
        smear: Millimetres::literal(0.2),
        frames: 4,
    },
    usual: Metres::literal(1.0),
};

static SURVEILLANCE_CAMERA: Row = Row {
    id: "surveillance-camera",
    camera: Camera {
        equivalent_focal_length: Millimetres::literal(28.0),
        pixels_across: 1920,
        frame: FrameShape::SixteenToNine,
        aperture: Millimetres::literal(2.0),
        contrast_to_noise: 10.0,
        smear: Millimetres::literal(0.5),
        frames: 1,
    },
    usual: Metres::literal(5.0),
};

static POCKET_ZOOM: Row = Row {
    id: "pocket-zoom",
    camera: Camera {
        equivalent_focal_length: Millimetres::literal(600.0),
        pixels_across: 5184,
        frame: FrameShape::FourToThree,
        aperture: Millimetres::literal(16.0),
        contrast_to_noise: 10.0,
        smear: Millimetres::literal(0.3),
        frames: 1,
    },
    usual: Metres::literal(20.0),
};

static LONG_LENS: Row = Row {
    id: "long-lens",
    camera: Camera {
        equivalent_focal_length: Millimetres::literal(1200.0),
        pixels_across: 6000,
        frame: FrameShape::ThreeToTwo,
        aperture: Millimetres::literal(50.0),
        contrast_to_noise: 20.0,
        smear: Millimetres::literal(0.2),
        frames: 1,
    },
    usual: Metres::literal(60.0),
};

static TELEVISION_CAMERA: Row = Row {
    id: "television-camera",
    camera: Camera {
        equivalent_focal_length: Millimetres::literal(200.0),
        pixels_across: 3840,
        frame: FrameShape::SixteenToNine,
        aperture: Millimetres::literal(25.0),
        contrast_to_noise: 20.0,
        smear: Millimetres::literal(0.5),
        frames: 4,
    },
    usual: Metres::literal(5.0),
};
