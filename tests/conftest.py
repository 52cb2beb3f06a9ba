"""What all tests share: chance is not timed, since a busy machine proves nothing."""

from hypothesis import settings

settings.register_profile("untimed", deadline=None)
settings.load_profile("untimed")
